; Theorem 4, pattern-cut-outside-the-change-only: If a blanking whose one pattern write stands between
; two bytes of the view change shows the old frame when cut before that change and the new one when
; cut after it, the write keeps hidden-writes.
; Size: 512 tiles of 2 planes, 1,024 cells, 2 pages, 2 banks. Wanted: refuted.
(set-info :status sat)
(set-logic QF_UFBV)
(declare-fun judged-under-new () Bool)
(declare-fun judged-under-old () Bool)
(declare-fun memory-entry ((_ BitVec 1) (_ BitVec 10)) (_ BitVec 9))
(declare-fun memory-pattern
             ((_ BitVec 9) (_ BitVec 1) (_ BitVec 3))
             (_ BitVec 8))
(declare-fun new-frame ((_ BitVec 10) (_ BitVec 3) (_ BitVec 3)) (_ BitVec 8))
(declare-fun new-view-bank () (_ BitVec 1))
(declare-fun new-view-colour ((_ BitVec 2)) (_ BitVec 8))
(declare-fun new-view-page () (_ BitVec 1))
(declare-fun old-frame ((_ BitVec 10) (_ BitVec 3) (_ BitVec 3)) (_ BitVec 8))
(declare-fun old-view-bank () (_ BitVec 1))
(declare-fun old-view-colour ((_ BitVec 2)) (_ BitVec 8))
(declare-fun old-view-page () (_ BitVec 1))
(declare-fun pixel-cell () (_ BitVec 10))
(declare-fun pixel-column () (_ BitVec 3))
(declare-fun pixel-row () (_ BitVec 3))
(declare-fun tile-of ((_ BitVec 1) (_ BitVec 9)) (_ BitVec 9))
(declare-fun written-byte () (_ BitVec 8))
(declare-fun written-plane () (_ BitVec 1))
(declare-fun written-row () (_ BitVec 3))
(declare-fun written-tile () (_ BitVec 9))
; judged under both views
(assert (and judged-under-old judged-under-new))
; cut before the view change, the old frame is seen
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          pixel-cell))
                                   #b1
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          pixel-cell))
                                   #b0
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column)))))
  (= (old-view-colour (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2)))
     (old-frame pixel-cell pixel-row pixel-column))))
; cut after the view change, the new frame is seen
(assert (let ((a!1 (and (= written-tile
                   (tile-of new-view-bank
                            (memory-entry new-view-page pixel-cell)))
                (= written-plane #b1)
                (= written-row pixel-row)))
      (a!4 (and (= written-tile
                   (tile-of new-view-bank
                            (memory-entry new-view-page pixel-cell)))
                (= written-plane #b0)
                (= written-row pixel-row))))
(let ((a!2 (ite a!1
                written-byte
                (memory-pattern (tile-of new-view-bank
                                         (memory-entry new-view-page pixel-cell))
                                #b1
                                pixel-row)))
      (a!5 (ite a!4
                written-byte
                (memory-pattern (tile-of new-view-bank
                                         (memory-entry new-view-page pixel-cell))
                                #b0
                                pixel-row))))
(let ((a!3 ((_ extract 0 0)
             (bvlshr a!2 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!6 ((_ extract 0 0)
             (bvlshr a!5 ((_ zero_extend 5) (bvnot pixel-column))))))
  (= (new-view-colour (concat a!3 a!6))
     (new-frame pixel-cell pixel-row pixel-column))))))
; not the goal
(assert (let ((a!1 ((_ extract 0 0)
             (bvlshr (memory-pattern written-tile #b1 written-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!2 ((_ extract 0 0)
             (bvlshr (memory-pattern written-tile #b0 written-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!3 (bvlshr (ite (and (= written-tile written-tile)
                             (= written-plane #b1)
                             (= written-row written-row))
                        written-byte
                        (memory-pattern written-tile #b1 written-row))
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!4 (bvlshr (ite (and (= written-tile written-tile)
                             (= written-plane #b0)
                             (= written-row written-row))
                        written-byte
                        (memory-pattern written-tile #b0 written-row))
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!5 (= (old-view-colour (concat a!1 a!2))
              (old-view-colour (concat ((_ extract 0 0) a!3)
                                       ((_ extract 0 0) a!4)))))
      (a!7 (= (new-view-colour (concat a!1 a!2))
              (new-view-colour (concat ((_ extract 0 0) a!3)
                                       ((_ extract 0 0) a!4))))))
(let ((a!6 (or (distinct (tile-of old-view-bank
                                  (memory-entry old-view-page pixel-cell))
                         written-tile)
               (distinct written-row pixel-row)
               (= (concat a!1 a!2)
                  (concat ((_ extract 0 0) a!3) ((_ extract 0 0) a!4)))
               a!5))
      (a!8 (or (distinct (tile-of new-view-bank
                                  (memory-entry new-view-page pixel-cell))
                         written-tile)
               (distinct written-row pixel-row)
               (= (concat a!1 a!2)
                  (concat ((_ extract 0 0) a!3) ((_ extract 0 0) a!4)))
               a!7)))
  (not (and (=> judged-under-old a!6) (=> judged-under-new a!8)))))))
(check-sat)
