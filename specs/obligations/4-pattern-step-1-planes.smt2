; Theorem 4, pattern-step-1-planes: A pattern write that is hidden under the views it is judged by
; leaves the old frame standing under the old view, and the new frame under the new one.
; Size: 512 tiles of 1 plane, 1,024 cells, 2 pages, 2 banks. Wanted: proved.
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
(declare-fun new-view-colour ((_ BitVec 1)) (_ BitVec 8))
(declare-fun new-view-page () (_ BitVec 1))
(declare-fun old-frame ((_ BitVec 10) (_ BitVec 3) (_ BitVec 3)) (_ BitVec 8))
(declare-fun old-view-bank () (_ BitVec 1))
(declare-fun old-view-colour ((_ BitVec 1)) (_ BitVec 8))
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
             (bvlshr (memory-pattern written-tile #b0 written-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!2 (bvlshr (ite (and (= written-tile written-tile)
                             (= written-plane #b0)
                             (= written-row written-row))
                        written-byte
                        (memory-pattern written-tile #b0 written-row))
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!3 (or (distinct (tile-of old-view-bank
                                  (memory-entry old-view-page pixel-cell))
                         written-tile)
               (distinct written-row pixel-row)
               (= a!1 ((_ extract 0 0) a!2))
               (= (old-view-colour a!1) (old-view-colour ((_ extract 0 0) a!2))))))
  (=> judged-under-old a!3))))
; from its first change on, writes are hidden under the new one
(assert (let ((a!1 ((_ extract 0 0)
             (bvlshr (memory-pattern written-tile #b0 written-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!2 (bvlshr (ite (and (= written-tile written-tile)
                             (= written-plane #b0)
                             (= written-row written-row))
                        written-byte
                        (memory-pattern written-tile #b0 written-row))
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!3 (or (distinct (tile-of new-view-bank
                                  (memory-entry new-view-page pixel-cell))
                         written-tile)
               (distinct written-row pixel-row)
               (= a!1 ((_ extract 0 0) a!2))
               (= (new-view-colour a!1) (new-view-colour ((_ extract 0 0) a!2))))))
  (=> judged-under-new a!3))))
; the old frame stood
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          pixel-cell))
                                   #b0
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column)))))
  (=> judged-under-old
      (= (old-view-colour ((_ extract 0 0) a!1))
         (old-frame pixel-cell pixel-row pixel-column)))))
; the new frame stood
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of new-view-bank
                                            (memory-entry new-view-page
                                                          pixel-cell))
                                   #b0
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column)))))
  (=> judged-under-new
      (= (new-view-colour ((_ extract 0 0) a!1))
         (new-frame pixel-cell pixel-row pixel-column)))))
; not the goal
(assert (let ((a!1 (and (= written-tile
                   (tile-of old-view-bank
                            (memory-entry old-view-page pixel-cell)))
                (= written-plane #b0)
                (= written-row pixel-row)))
      (a!4 (and (= written-tile
                   (tile-of new-view-bank
                            (memory-entry new-view-page pixel-cell)))
                (= written-plane #b0)
                (= written-row pixel-row))))
(let ((a!2 (ite a!1
                written-byte
                (memory-pattern (tile-of old-view-bank
                                         (memory-entry old-view-page pixel-cell))
                                #b0
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
(let ((a!7 (and (=> judged-under-old
                    (= (old-view-colour a!3)
                       (old-frame pixel-cell pixel-row pixel-column)))
                (=> judged-under-new
                    (= (new-view-colour a!6)
                       (new-frame pixel-cell pixel-row pixel-column))))))
  (not a!7))))))
(check-sat)
