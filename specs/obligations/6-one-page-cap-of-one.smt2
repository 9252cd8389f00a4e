; Theorem 6, one-page-cap-of-one: With one page and one tile beside the blank one, no picture of one
; occupied cell can follow one that has another cell occupied.
; Size: 2 tiles of 2 planes, 2 cells, one page; a pixel of each tile. Wanted: proved.
(set-info :status unsat)
(set-logic QF_UFBV)
(declare-fun after-entry ((_ BitVec 1) (_ BitVec 1)) (_ BitVec 1))
(declare-fun after-pattern
             ((_ BitVec 1) (_ BitVec 1) (_ BitVec 1))
             (_ BitVec 8))
(declare-fun background () (_ BitVec 8))
(declare-fun before-entry ((_ BitVec 1) (_ BitVec 1)) (_ BitVec 1))
(declare-fun before-pattern
             ((_ BitVec 1) (_ BitVec 1) (_ BitVec 1))
             (_ BitVec 8))
(declare-fun new-view-bank () (_ BitVec 1))
(declare-fun new-view-colour ((_ BitVec 2)) (_ BitVec 8))
(declare-fun new-view-page () (_ BitVec 1))
(declare-fun old-view-bank () (_ BitVec 1))
(declare-fun old-view-colour ((_ BitVec 2)) (_ BitVec 8))
(declare-fun old-view-page () (_ BitVec 1))
(declare-fun pixel-column () (_ BitVec 3))
(declare-fun pixel-row () (_ BitVec 1))
(declare-fun tile-of ((_ BitVec 1) (_ BitVec 1)) (_ BitVec 1))
; one page: both frames show the same map
(assert (and (= (tile-of old-view-bank (before-entry old-view-page #b0))
        (tile-of new-view-bank (after-entry new-view-page #b0)))
     (= (tile-of old-view-bank (before-entry old-view-page #b1))
        (tile-of new-view-bank (after-entry new-view-page #b1)))))
; the blank tile looks like background
(assert (let ((a!1 ((_ extract 0 0)
             (bvlshr (before-pattern #b0 #b1 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!2 ((_ extract 0 0)
             (bvlshr (before-pattern #b0 #b0 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!3 ((_ extract 0 0)
             (bvlshr (after-pattern #b0 #b1 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!4 ((_ extract 0 0)
             (bvlshr (after-pattern #b0 #b0 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column))))))
  (and (= (old-view-colour (concat a!1 a!2)) background)
       (= (new-view-colour (concat a!3 a!4)) background))))
; the seen picture has cell 0 alone
(assert (let ((a!1 (bvlshr (before-pattern (tile-of old-view-bank
                                            (before-entry old-view-page #b0))
                                   #b1
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (before-pattern (tile-of old-view-bank
                                            (before-entry old-view-page #b0))
                                   #b0
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!4 (bvlshr (before-pattern (tile-of old-view-bank
                                            (before-entry old-view-page #b1))
                                   #b1
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!5 (bvlshr (before-pattern (tile-of old-view-bank
                                            (before-entry old-view-page #b1))
                                   #b0
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!3 (distinct (old-view-colour (concat ((_ extract 0 0) a!1)
                                              ((_ extract 0 0) a!2)))
                     background))
      (a!6 (= (old-view-colour (concat ((_ extract 0 0) a!4)
                                       ((_ extract 0 0) a!5)))
              background)))
  (and a!3 a!6))))
; the next picture has cell 1 alone
(assert (let ((a!1 (bvlshr (after-pattern (tile-of new-view-bank
                                           (after-entry new-view-page #b0))
                                  #b1
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (after-pattern (tile-of new-view-bank
                                           (after-entry new-view-page #b0))
                                  #b0
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!4 (bvlshr (after-pattern (tile-of new-view-bank
                                           (after-entry new-view-page #b1))
                                  #b1
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!5 (bvlshr (after-pattern (tile-of new-view-bank
                                           (after-entry new-view-page #b1))
                                  #b0
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!3 (= (new-view-colour (concat ((_ extract 0 0) a!1)
                                       ((_ extract 0 0) a!2)))
              background))
      (a!6 (distinct (new-view-colour (concat ((_ extract 0 0) a!4)
                                              ((_ extract 0 0) a!5)))
                     background)))
  (and a!3 a!6))))
; not the goal
(assert (not false))
(check-sat)
