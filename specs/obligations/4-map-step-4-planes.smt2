; Theorem 4, map-step-4-planes: A map write that is hidden under the views it is judged by leaves the
; old frame standing under the old view, and the new frame under the new one.
; Size: 512 tiles of 4 planes, 1,024 cells, 2 pages, 2 banks. Wanted: proved.
(set-info :status unsat)
(set-logic QF_UFBV)
(declare-fun judged-under-new () Bool)
(declare-fun judged-under-old () Bool)
(declare-fun memory-entry ((_ BitVec 1) (_ BitVec 10)) (_ BitVec 9))
(declare-fun memory-pattern
             ((_ BitVec 9) (_ BitVec 2) (_ BitVec 3))
             (_ BitVec 8))
(declare-fun new-frame ((_ BitVec 10) (_ BitVec 3) (_ BitVec 3)) (_ BitVec 8))
(declare-fun new-view-bank () (_ BitVec 1))
(declare-fun new-view-colour ((_ BitVec 4)) (_ BitVec 8))
(declare-fun new-view-page () (_ BitVec 1))
(declare-fun old-frame ((_ BitVec 10) (_ BitVec 3) (_ BitVec 3)) (_ BitVec 8))
(declare-fun old-view-bank () (_ BitVec 1))
(declare-fun old-view-colour ((_ BitVec 4)) (_ BitVec 8))
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
                                   #b11
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          written-cell))
                                   #b10
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          written-cell))
                                   #b01
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!4 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          written-cell))
                                   #b00
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!6 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of old-view-bank written-entry)
                                     #b11
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!7 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of old-view-bank written-entry)
                                     #b10
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!8 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of old-view-bank written-entry)
                                     #b01
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!9 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of old-view-bank written-entry)
                                     #b00
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!5 (concat (concat (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2))
                           ((_ extract 0 0) a!3))
                   ((_ extract 0 0) a!4)))
      (a!10 (old-view-colour (concat (concat (concat a!6 a!7) a!8) a!9))))
  (=> judged-under-old
      (or (distinct old-view-page written-page)
          (distinct pixel-cell written-cell)
          (= (old-view-colour a!5) a!10))))))
; from its first change on, writes are hidden under the new one
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of new-view-bank
                                            (memory-entry new-view-page
                                                          written-cell))
                                   #b11
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (memory-pattern (tile-of new-view-bank
                                            (memory-entry new-view-page
                                                          written-cell))
                                   #b10
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (memory-pattern (tile-of new-view-bank
                                            (memory-entry new-view-page
                                                          written-cell))
                                   #b01
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!4 (bvlshr (memory-pattern (tile-of new-view-bank
                                            (memory-entry new-view-page
                                                          written-cell))
                                   #b00
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!6 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of new-view-bank written-entry)
                                     #b11
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!7 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of new-view-bank written-entry)
                                     #b10
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!8 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of new-view-bank written-entry)
                                     #b01
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!9 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of new-view-bank written-entry)
                                     #b00
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!5 (concat (concat (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2))
                           ((_ extract 0 0) a!3))
                   ((_ extract 0 0) a!4)))
      (a!10 (new-view-colour (concat (concat (concat a!6 a!7) a!8) a!9))))
  (=> judged-under-new
      (or (distinct new-view-page written-page)
          (distinct pixel-cell written-cell)
          (= (new-view-colour a!5) a!10))))))
; the old frame stood
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          pixel-cell))
                                   #b11
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          pixel-cell))
                                   #b10
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          pixel-cell))
                                   #b01
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!4 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          pixel-cell))
                                   #b00
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!5 (concat (concat (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2))
                           ((_ extract 0 0) a!3))
                   ((_ extract 0 0) a!4))))
  (=> judged-under-old
      (= (old-view-colour a!5) (old-frame pixel-cell pixel-row pixel-column))))))
; the new frame stood
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of new-view-bank
                                            (memory-entry new-view-page
                                                          pixel-cell))
                                   #b11
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (memory-pattern (tile-of new-view-bank
                                            (memory-entry new-view-page
                                                          pixel-cell))
                                   #b10
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (memory-pattern (tile-of new-view-bank
                                            (memory-entry new-view-page
                                                          pixel-cell))
                                   #b01
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!4 (bvlshr (memory-pattern (tile-of new-view-bank
                                            (memory-entry new-view-page
                                                          pixel-cell))
                                   #b00
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!5 (concat (concat (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2))
                           ((_ extract 0 0) a!3))
                   ((_ extract 0 0) a!4))))
  (=> judged-under-new
      (= (new-view-colour a!5) (new-frame pixel-cell pixel-row pixel-column))))))
; not the goal
(assert (let ((a!1 (tile-of old-view-bank
                    (ite (and (= written-page old-view-page)
                              (= written-cell pixel-cell))
                         written-entry
                         (memory-entry old-view-page pixel-cell))))
      (a!7 (tile-of new-view-bank
                    (ite (and (= written-page new-view-page)
                              (= written-cell pixel-cell))
                         written-entry
                         (memory-entry new-view-page pixel-cell)))))
(let ((a!2 ((_ extract 0 0)
             (bvlshr (memory-pattern a!1 #b11 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!3 ((_ extract 0 0)
             (bvlshr (memory-pattern a!1 #b10 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!4 ((_ extract 0 0)
             (bvlshr (memory-pattern a!1 #b01 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!5 ((_ extract 0 0)
             (bvlshr (memory-pattern a!1 #b00 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!8 ((_ extract 0 0)
             (bvlshr (memory-pattern a!7 #b11 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!9 ((_ extract 0 0)
             (bvlshr (memory-pattern a!7 #b10 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!10 ((_ extract 0 0)
              (bvlshr (memory-pattern a!7 #b01 pixel-row)
                      ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!11 ((_ extract 0 0)
              (bvlshr (memory-pattern a!7 #b00 pixel-row)
                      ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!6 (old-view-colour (concat (concat (concat a!2 a!3) a!4) a!5)))
      (a!12 (new-view-colour (concat (concat (concat a!8 a!9) a!10) a!11))))
(let ((a!13 (and (=> judged-under-old
                     (= a!6 (old-frame pixel-cell pixel-row pixel-column)))
                 (=> judged-under-new
                     (= a!12 (new-frame pixel-cell pixel-row pixel-column))))))
  (not a!13))))))
(check-sat)
