; Theorem 1, hiding-2-planes-depth-1: Two memories that agree, at a pixel, in the bits of the side
; that the palette shows look alike there, whatever the other planes hold.
; Size: 512 tiles of 2 planes, 1,024 cells, 2 pages, 2 banks. Wanted: proved.
(set-info :status unsat)
(set-logic QF_UFBV)
(declare-fun one-entry ((_ BitVec 1) (_ BitVec 10)) (_ BitVec 9))
(declare-fun one-pattern ((_ BitVec 9) (_ BitVec 1) (_ BitVec 3)) (_ BitVec 8))
(declare-fun other-entry ((_ BitVec 1) (_ BitVec 10)) (_ BitVec 9))
(declare-fun other-pattern
             ((_ BitVec 9) (_ BitVec 1) (_ BitVec 3))
             (_ BitVec 8))
(declare-fun pixel-cell () (_ BitVec 10))
(declare-fun pixel-column () (_ BitVec 3))
(declare-fun pixel-row () (_ BitVec 3))
(declare-fun shade ((_ BitVec 1)) (_ BitVec 8))
(declare-fun side () (_ BitVec 1))
(declare-fun tile-of ((_ BitVec 1) (_ BitVec 9)) (_ BitVec 9))
(declare-fun view-bank () (_ BitVec 1))
(declare-fun view-colour ((_ BitVec 2)) (_ BitVec 8))
(declare-fun view-page () (_ BitVec 1))
; the palette shows the side
(assert (let ((a!1 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 6) #b00)
                     (bvmul ((_ zero_extend 7) side) #x01))))
      (a!2 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 6) #b01)
                     (bvmul ((_ zero_extend 7) side) #x01))))
      (a!3 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 6) #b10)
                     (bvmul ((_ zero_extend 7) side) #x01))))
      (a!4 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 6) #b11)
                     (bvmul ((_ zero_extend 7) side) #x01)))))
  (and (= (view-colour #b00) (shade a!1))
       (= (view-colour #b01) (shade a!2))
       (= (view-colour #b10) (shade a!3))
       (= (view-colour #b11) (shade a!4)))))
; both memories hold the same bits of the side at the pixel
(assert (let ((a!1 (bvlshr (one-pattern (tile-of view-bank
                                         (one-entry view-page pixel-cell))
                                #b1
                                pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (one-pattern (tile-of view-bank
                                         (one-entry view-page pixel-cell))
                                #b0
                                pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!4 (bvlshr (other-pattern (tile-of view-bank
                                           (other-entry view-page pixel-cell))
                                  #b1
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!5 (bvlshr (other-pattern (tile-of view-bank
                                           (other-entry view-page pixel-cell))
                                  #b0
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!3 (bvlshr ((_ zero_extend 6)
                     (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2)))
                   (bvmul ((_ zero_extend 7) side) #x01)))
      (a!6 (bvlshr ((_ zero_extend 6)
                     (concat ((_ extract 0 0) a!4) ((_ extract 0 0) a!5)))
                   (bvmul ((_ zero_extend 7) side) #x01))))
  (= ((_ extract 0 0) a!3) ((_ extract 0 0) a!6)))))
; not the goal
(assert (let ((a!1 (bvlshr (one-pattern (tile-of view-bank
                                         (one-entry view-page pixel-cell))
                                #b1
                                pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (one-pattern (tile-of view-bank
                                         (one-entry view-page pixel-cell))
                                #b0
                                pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (other-pattern (tile-of view-bank
                                           (other-entry view-page pixel-cell))
                                  #b1
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!4 (bvlshr (other-pattern (tile-of view-bank
                                           (other-entry view-page pixel-cell))
                                  #b0
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!5 (= (view-colour (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2)))
              (view-colour (concat ((_ extract 0 0) a!3) ((_ extract 0 0) a!4))))))
  (not a!5))))
(check-sat)
