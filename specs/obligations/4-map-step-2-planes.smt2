; Theorem 4, map-step-2-planes: A map write that is hidden under the views it is judged by leaves the
; old frame standing under the old view, and the new frame under the new one.
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
(declare-fun written-cell () (_ BitVec 10))
(declare-fun written-entry () (_ BitVec 9))
(declare-fun written-page () (_ BitVec 1))
; until the view has changed, writes are hidden under the old one
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          written-cell))
                                   #b1
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          written-cell))
                                   #b0
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of old-view-bank written-entry)
                                     #b1
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!4 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of old-view-bank written-entry)
                                     #b0
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!5 (= (old-view-colour (concat ((_ extract 0 0) a!1)
                                       ((_ extract 0 0) a!2)))
              (old-view-colour (concat a!3 a!4)))))
  (=> judged-under-old
      (or (distinct old-view-page written-page)
          (distinct pixel-cell written-cell)
          a!5)))))
; from its first change on, writes are hidden under the new one
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of new-view-bank
                                            (memory-entry new-view-page
                                                          written-cell))
                                   #b1
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (memory-pattern (tile-of new-view-bank
                                            (memory-entry new-view-page
                                                          written-cell))
                                   #b0
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of new-view-bank written-entry)
                                     #b1
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!4 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of new-view-bank written-entry)
                                     #b0
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!5 (= (new-view-colour (concat ((_ extract 0 0) a!1)
                                       ((_ extract 0 0) a!2)))
              (new-view-colour (concat a!3 a!4)))))
  (=> judged-under-new
      (or (distinct new-view-page written-page)
          (distinct pixel-cell written-cell)
          a!5)))))
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
(assert (let ((a!1 (tile-of old-view-bank
                    (ite (and (= written-page old-view-page)
                              (= written-cell pixel-cell))
                         written-entry
                         (memory-entry old-view-page pixel-cell))))
      (a!5 (tile-of new-view-bank
                    (ite (and (= written-page new-view-page)
                              (= written-cell pixel-cell))
                         written-entry
                         (memory-entry new-view-page pixel-cell)))))
(let ((a!2 ((_ extract 0 0)
             (bvlshr (memory-pattern a!1 #b1 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!3 ((_ extract 0 0)
             (bvlshr (memory-pattern a!1 #b0 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!6 ((_ extract 0 0)
             (bvlshr (memory-pattern a!5 #b1 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!7 ((_ extract 0 0)
             (bvlshr (memory-pattern a!5 #b0 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!4 (=> judged-under-old
               (= (old-view-colour (concat a!2 a!3))
                  (old-frame pixel-cell pixel-row pixel-column))))
      (a!8 (=> judged-under-new
               (= (new-view-colour (concat a!6 a!7))
                  (new-frame pixel-cell pixel-row pixel-column)))))
  (not (and a!4 a!8))))))
(check-sat)
