; Theorem 6, one-page-pairs: With one map page, two cells whose pairs (seen, next) differ stand in two
; tiles: seen and next picture together need a tile for each different pair.
; Size: 512 tiles of 4 planes, 1,024 cells, 2 pages, 2 banks. Wanted: proved.
(set-info :status unsat)
(set-logic QF_UFBV)
(declare-fun after-entry ((_ BitVec 1) (_ BitVec 10)) (_ BitVec 9))
(declare-fun after-pattern
             ((_ BitVec 9) (_ BitVec 2) (_ BitVec 3))
             (_ BitVec 8))
(declare-fun before-entry ((_ BitVec 1) (_ BitVec 10)) (_ BitVec 9))
(declare-fun before-pattern
             ((_ BitVec 9) (_ BitVec 2) (_ BitVec 3))
             (_ BitVec 8))
(declare-fun new-view-bank () (_ BitVec 1))
(declare-fun new-view-colour ((_ BitVec 4)) (_ BitVec 8))
(declare-fun new-view-page () (_ BitVec 1))
(declare-fun old-view-bank () (_ BitVec 1))
(declare-fun old-view-colour ((_ BitVec 4)) (_ BitVec 8))
(declare-fun old-view-page () (_ BitVec 1))
(declare-fun one-cell () (_ BitVec 10))
(declare-fun other-cell () (_ BitVec 10))
(declare-fun pixel-column () (_ BitVec 3))
(declare-fun pixel-row () (_ BitVec 3))
(declare-fun tile-of ((_ BitVec 1) (_ BitVec 9)) (_ BitVec 9))
; one page: both frames show the same map
(assert (and (= (tile-of old-view-bank (before-entry old-view-page one-cell))
        (tile-of new-view-bank (after-entry new-view-page one-cell)))
     (= (tile-of old-view-bank (before-entry old-view-page other-cell))
        (tile-of new-view-bank (after-entry new-view-page other-cell)))))
; the pairs (seen, next) differ at some pixel
(assert (let ((a!1 (bvlshr (before-pattern (tile-of old-view-bank
                                            (before-entry old-view-page
                                                          one-cell))
                                   #b11
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (before-pattern (tile-of old-view-bank
                                            (before-entry old-view-page
                                                          one-cell))
                                   #b10
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (before-pattern (tile-of old-view-bank
                                            (before-entry old-view-page
                                                          one-cell))
                                   #b01
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!4 (bvlshr (before-pattern (tile-of old-view-bank
                                            (before-entry old-view-page
                                                          one-cell))
                                   #b00
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!6 (bvlshr (before-pattern (tile-of old-view-bank
                                            (before-entry old-view-page
                                                          other-cell))
                                   #b11
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!7 (bvlshr (before-pattern (tile-of old-view-bank
                                            (before-entry old-view-page
                                                          other-cell))
                                   #b10
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!8 (bvlshr (before-pattern (tile-of old-view-bank
                                            (before-entry old-view-page
                                                          other-cell))
                                   #b01
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!9 (bvlshr (before-pattern (tile-of old-view-bank
                                            (before-entry old-view-page
                                                          other-cell))
                                   #b00
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!11 (bvlshr (after-pattern (tile-of new-view-bank
                                            (after-entry new-view-page one-cell))
                                   #b11
                                   pixel-row)
                    ((_ zero_extend 5) (bvnot pixel-column))))
      (a!12 (bvlshr (after-pattern (tile-of new-view-bank
                                            (after-entry new-view-page one-cell))
                                   #b10
                                   pixel-row)
                    ((_ zero_extend 5) (bvnot pixel-column))))
      (a!13 (bvlshr (after-pattern (tile-of new-view-bank
                                            (after-entry new-view-page one-cell))
                                   #b01
                                   pixel-row)
                    ((_ zero_extend 5) (bvnot pixel-column))))
      (a!14 (bvlshr (after-pattern (tile-of new-view-bank
                                            (after-entry new-view-page one-cell))
                                   #b00
                                   pixel-row)
                    ((_ zero_extend 5) (bvnot pixel-column))))
      (a!16 (bvlshr (after-pattern (tile-of new-view-bank
                                            (after-entry new-view-page
                                                         other-cell))
                                   #b11
                                   pixel-row)
                    ((_ zero_extend 5) (bvnot pixel-column))))
      (a!17 (bvlshr (after-pattern (tile-of new-view-bank
                                            (after-entry new-view-page
                                                         other-cell))
                                   #b10
                                   pixel-row)
                    ((_ zero_extend 5) (bvnot pixel-column))))
      (a!18 (bvlshr (after-pattern (tile-of new-view-bank
                                            (after-entry new-view-page
                                                         other-cell))
                                   #b01
                                   pixel-row)
                    ((_ zero_extend 5) (bvnot pixel-column))))
      (a!19 (bvlshr (after-pattern (tile-of new-view-bank
                                            (after-entry new-view-page
                                                         other-cell))
                                   #b00
                                   pixel-row)
                    ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!5 (concat (concat (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2))
                           ((_ extract 0 0) a!3))
                   ((_ extract 0 0) a!4)))
      (a!10 (concat (concat (concat ((_ extract 0 0) a!6) ((_ extract 0 0) a!7))
                            ((_ extract 0 0) a!8))
                    ((_ extract 0 0) a!9)))
      (a!15 (concat (concat (concat ((_ extract 0 0) a!11)
                                    ((_ extract 0 0) a!12))
                            ((_ extract 0 0) a!13))
                    ((_ extract 0 0) a!14)))
      (a!20 (concat (concat (concat ((_ extract 0 0) a!16)
                                    ((_ extract 0 0) a!17))
                            ((_ extract 0 0) a!18))
                    ((_ extract 0 0) a!19))))
  (or (distinct (old-view-colour a!5) (old-view-colour a!10))
      (distinct (new-view-colour a!15) (new-view-colour a!20))))))
; not the goal
(assert (not (distinct (tile-of old-view-bank (before-entry old-view-page one-cell))
               (tile-of old-view-bank (before-entry old-view-page other-cell)))))
(check-sat)
