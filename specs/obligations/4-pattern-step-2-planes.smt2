; Theorem 4, pattern-step-2-planes: A pattern write that is hidden under the views it is judged by
; leaves the old frame standing under the old view, and the new frame under the new one.
; Size: 512 tiles of 2 planes, 1,024 cells, 2 pages, 2 banks. Wanted: proved.
(set-info :status unsat)
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
; until the view has changed, writes are hidden under the old one
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
                                       ((_ extract 0 0) a!4))))))
(let ((a!6 (or (distinct (tile-of old-view-bank
                                  (memory-entry old-view-page pixel-cell))
                         written-tile)
               (distinct written-row pixel-row)
               (= (concat a!1 a!2)
                  (concat ((_ extract 0 0) a!3) ((_ extract 0 0) a!4)))
               a!5)))
  (=> judged-under-old a!6)))))
; from its first change on, writes are hidden under the new one
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
(let ((a!5 (= (new-view-colour (concat a!1 a!2))
              (new-view-colour (concat ((_ extract 0 0) a!3)
                                       ((_ extract 0 0) a!4))))))
(let ((a!6 (or (distinct (tile-of new-view-bank
                                  (memory-entry new-view-page pixel-cell))
                         written-tile)
               (distinct written-row pixel-row)
               (= (concat a!1 a!2)
                  (concat ((_ extract 0 0) a!3) ((_ extract 0 0) a!4)))
               a!5)))
  (=> judged-under-new a!6)))))
; the old frame stood
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
(let ((a!3 (= (old-view-colour (concat ((_ extract 0 0) a!1)
                                       ((_ extract 0 0) a!2)))
              (old-frame pixel-cell pixel-row pixel-column))))
  (=> judged-under-old a!3))))
; the new frame stood
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of new-view-bank
                                            (memory-entry new-view-page
                                                          pixel-cell))
                                   #b1
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (memory-pattern (tile-of new-view-bank
                                            (memory-entry new-view-page
                                                          pixel-cell))
                                   #b0
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!3 (= (new-view-colour (concat ((_ extract 0 0) a!1)
                                       ((_ extract 0 0) a!2)))
              (new-frame pixel-cell pixel-row pixel-column))))
  (=> judged-under-new a!3))))
; not the goal
(assert (let ((a!1 (and (= written-tile
                   (tile-of old-view-bank
                            (memory-entry old-view-page pixel-cell)))
                (= written-plane #b1)
                (= written-row pixel-row)))
      (a!4 (and (= written-tile
                   (tile-of old-view-bank
                            (memory-entry old-view-page pixel-cell)))
                (= written-plane #b0)
                (= written-row pixel-row)))
      (a!8 (and (= written-tile
                   (tile-of new-view-bank
                            (memory-entry new-view-page pixel-cell)))
                (= written-plane #b1)
                (= written-row pixel-row)))
      (a!11 (and (= written-tile
                    (tile-of new-view-bank
                             (memory-entry new-view-page pixel-cell)))
                 (= written-plane #b0)
                 (= written-row pixel-row))))
(let ((a!2 (ite a!1
                written-byte
                (memory-pattern (tile-of old-view-bank
                                         (memory-entry old-view-page pixel-cell))
                                #b1
                                pixel-row)))
      (a!5 (ite a!4
                written-byte
                (memory-pattern (tile-of old-view-bank
                                         (memory-entry old-view-page pixel-cell))
                                #b0
                                pixel-row)))
      (a!9 (ite a!8
                written-byte
                (memory-pattern (tile-of new-view-bank
                                         (memory-entry new-view-page pixel-cell))
                                #b1
                                pixel-row)))
      (a!12 (ite a!11
                 written-byte
                 (memory-pattern (tile-of new-view-bank
                                          (memory-entry new-view-page
                                                        pixel-cell))
                                 #b0
                                 pixel-row))))
(let ((a!3 ((_ extract 0 0)
             (bvlshr a!2 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!6 ((_ extract 0 0)
             (bvlshr a!5 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!10 ((_ extract 0 0)
              (bvlshr a!9 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!13 ((_ extract 0 0)
              (bvlshr a!12 ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!7 (=> judged-under-old
               (= (old-view-colour (concat a!3 a!6))
                  (old-frame pixel-cell pixel-row pixel-column))))
      (a!14 (=> judged-under-new
                (= (new-view-colour (concat a!10 a!13))
                   (new-frame pixel-cell pixel-row pixel-column)))))
  (not (and a!7 a!14)))))))
(check-sat)
