; Theorem 6, one-page-next-picture-alone: With one map page, cells stand in two tiles only if they
; differ in the next picture: a tile for each pattern of the next picture is enough.
; Size: 512 tiles of 4 planes, 1,024 cells, 2 pages, 2 banks. Wanted: refuted.
(set-info :status sat)
(set-logic QF_UFBV)
(declare-fun after-entry ((_ BitVec 1) (_ BitVec 10)) (_ BitVec 9))
(declare-fun after-pattern
             ((_ BitVec 9) (_ BitVec 2) (_ BitVec 3))
             (_ BitVec 8))
(declare-fun before-entry ((_ BitVec 1) (_ BitVec 10)) (_ BitVec 9))
(declare-fun new-view-bank () (_ BitVec 1))
(declare-fun new-view-colour ((_ BitVec 4)) (_ BitVec 8))
(declare-fun new-view-page () (_ BitVec 1))
(declare-fun old-view-bank () (_ BitVec 1))
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
; the cells stand in two tiles
(assert (distinct (tile-of old-view-bank (before-entry old-view-page one-cell))
          (tile-of old-view-bank (before-entry old-view-page other-cell))))
; not the goal
(assert (let ((a!1 (bvlshr (after-pattern (tile-of new-view-bank
                                           (after-entry new-view-page one-cell))
                                  #b11
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (after-pattern (tile-of new-view-bank
                                           (after-entry new-view-page one-cell))
                                  #b10
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (after-pattern (tile-of new-view-bank
                                           (after-entry new-view-page one-cell))
                                  #b01
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!4 (bvlshr (after-pattern (tile-of new-view-bank
                                           (after-entry new-view-page one-cell))
                                  #b00
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!6 (bvlshr (after-pattern (tile-of new-view-bank
                                           (after-entry new-view-page
                                                        other-cell))
                                  #b11
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!7 (bvlshr (after-pattern (tile-of new-view-bank
                                           (after-entry new-view-page
                                                        other-cell))
                                  #b10
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!8 (bvlshr (after-pattern (tile-of new-view-bank
                                           (after-entry new-view-page
                                                        other-cell))
                                  #b01
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!9 (bvlshr (after-pattern (tile-of new-view-bank
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
                    ((_ extract 0 0) a!9))))
  (not (distinct (new-view-colour a!5) (new-view-colour a!10))))))
(check-sat)
