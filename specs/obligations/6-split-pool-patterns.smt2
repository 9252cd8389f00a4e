; Theorem 6, split-pool-patterns: Where the page or bank turns and the palette stays, a cell of the
; seen picture and a cell of the next that look different stand in two tiles: together they need a
; tile for each pattern of either.
; Size: 512 tiles of 4 planes, 1,024 cells, 2 pages, 2 banks. Wanted: proved.
(set-info :status unsat)
(set-logic QF_UFBV)
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
(declare-fun other-cell () (_ BitVec 10))
(declare-fun pixel-cell () (_ BitVec 10))
(declare-fun pixel-column () (_ BitVec 3))
(declare-fun pixel-row () (_ BitVec 3))
(declare-fun tile-of ((_ BitVec 1) (_ BitVec 9)) (_ BitVec 9))
; the palette stays
(assert (and (= (old-view-colour #x0) (new-view-colour #x0))
     (= (old-view-colour #x1) (new-view-colour #x1))
     (= (old-view-colour #x2) (new-view-colour #x2))
     (= (old-view-colour #x3) (new-view-colour #x3))
     (= (old-view-colour #x4) (new-view-colour #x4))
     (= (old-view-colour #x5) (new-view-colour #x5))
     (= (old-view-colour #x6) (new-view-colour #x6))
     (= (old-view-colour #x7) (new-view-colour #x7))
     (= (old-view-colour #x8) (new-view-colour #x8))
     (= (old-view-colour #x9) (new-view-colour #x9))
     (= (old-view-colour #xa) (new-view-colour #xa))
     (= (old-view-colour #xb) (new-view-colour #xb))
     (= (old-view-colour #xc) (new-view-colour #xc))
     (= (old-view-colour #xd) (new-view-colour #xd))
     (= (old-view-colour #xe) (new-view-colour #xe))
     (= (old-view-colour #xf) (new-view-colour #xf))))
; a seen cell and a next one look different
(assert (let ((a!1 (bvlshr (before-pattern (tile-of old-view-bank
                                            (before-entry old-view-page
                                                          pixel-cell))
                                   #b11
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (before-pattern (tile-of old-view-bank
                                            (before-entry old-view-page
                                                          pixel-cell))
                                   #b10
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (before-pattern (tile-of old-view-bank
                                            (before-entry old-view-page
                                                          pixel-cell))
                                   #b01
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!4 (bvlshr (before-pattern (tile-of old-view-bank
                                            (before-entry old-view-page
                                                          pixel-cell))
                                   #b00
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!6 (bvlshr (before-pattern (tile-of new-view-bank
                                            (before-entry new-view-page
                                                          other-cell))
                                   #b11
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!7 (bvlshr (before-pattern (tile-of new-view-bank
                                            (before-entry new-view-page
                                                          other-cell))
                                   #b10
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!8 (bvlshr (before-pattern (tile-of new-view-bank
                                            (before-entry new-view-page
                                                          other-cell))
                                   #b01
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!9 (bvlshr (before-pattern (tile-of new-view-bank
                                            (before-entry new-view-page
                                                          other-cell))
                                   #b00
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!5 (concat (concat (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2))
                           ((_ extract 0 0) a!3))
                   ((_ extract 0 0) a!4)))
      (a!10 (concat (concat (concat ((_ extract 0 0) a!6) ((_ extract 0 0) a!7))
                            ((_ extract 0 0) a!8))
                    ((_ extract 0 0) a!9))))
  (distinct (old-view-colour a!5) (new-view-colour a!10)))))
; not the goal
(assert (not (distinct (tile-of old-view-bank (before-entry old-view-page pixel-cell))
               (tile-of new-view-bank (before-entry new-view-page other-cell)))))
(check-sat)
