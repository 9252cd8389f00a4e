; Theorem 1, hiding-3-planes-depth-1: Two memories that agree, at a pixel, in the bits of the side
; that the palette shows look alike there, whatever the other planes hold.
; Size: 512 tiles of 3 planes, 1,024 cells, 2 pages, 2 banks. Wanted: proved.
(set-info :status unsat)
(set-logic QF_UFBV)
(declare-fun one-entry ((_ BitVec 1) (_ BitVec 10)) (_ BitVec 9))
(declare-fun one-pattern ((_ BitVec 9) (_ BitVec 2) (_ BitVec 3)) (_ BitVec 8))
(declare-fun other-entry ((_ BitVec 1) (_ BitVec 10)) (_ BitVec 9))
(declare-fun other-pattern
             ((_ BitVec 9) (_ BitVec 2) (_ BitVec 3))
             (_ BitVec 8))
(declare-fun pixel-cell () (_ BitVec 10))
(declare-fun pixel-column () (_ BitVec 3))
(declare-fun pixel-row () (_ BitVec 3))
(declare-fun shade ((_ BitVec 1)) (_ BitVec 8))
(declare-fun side () (_ BitVec 2))
(declare-fun tile-of ((_ BitVec 1) (_ BitVec 9)) (_ BitVec 9))
(declare-fun view-bank () (_ BitVec 1))
(declare-fun view-colour ((_ BitVec 3)) (_ BitVec 8))
(declare-fun view-page () (_ BitVec 1))
; the palette shows the side
(assert (let ((a!1 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 5) #b000)
                     (bvmul ((_ zero_extend 6) side) #x01))))
      (a!2 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 5) #b001)
                     (bvmul ((_ zero_extend 6) side) #x01))))
      (a!3 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 5) #b010)
                     (bvmul ((_ zero_extend 6) side) #x01))))
      (a!4 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 5) #b011)
                     (bvmul ((_ zero_extend 6) side) #x01))))
      (a!5 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 5) #b100)
                     (bvmul ((_ zero_extend 6) side) #x01))))
      (a!6 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 5) #b101)
                     (bvmul ((_ zero_extend 6) side) #x01))))
      (a!7 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 5) #b110)
                     (bvmul ((_ zero_extend 6) side) #x01))))
      (a!8 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 5) #b111)
                     (bvmul ((_ zero_extend 6) side) #x01)))))
  (and (= (view-colour #b000) (shade a!1))
       (= (view-colour #b001) (shade a!2))
       (= (view-colour #b010) (shade a!3))
       (= (view-colour #b011) (shade a!4))
       (= (view-colour #b100) (shade a!5))
       (= (view-colour #b101) (shade a!6))
       (= (view-colour #b110) (shade a!7))
       (= (view-colour #b111) (shade a!8)))))
; both memories hold the same bits of the side at the pixel
(assert (let ((a!1 (bvlshr (one-pattern (tile-of view-bank
                                         (one-entry view-page pixel-cell))
                                #b10
                                pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (one-pattern (tile-of view-bank
                                         (one-entry view-page pixel-cell))
                                #b01
                                pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (one-pattern (tile-of view-bank
                                         (one-entry view-page pixel-cell))
                                #b00
                                pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!6 (bvlshr (other-pattern (tile-of view-bank
                                           (other-entry view-page pixel-cell))
                                  #b10
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!7 (bvlshr (other-pattern (tile-of view-bank
                                           (other-entry view-page pixel-cell))
                                  #b01
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!8 (bvlshr (other-pattern (tile-of view-bank
                                           (other-entry view-page pixel-cell))
                                  #b00
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!4 ((_ zero_extend 5)
             (concat (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2))
                     ((_ extract 0 0) a!3))))
      (a!9 ((_ zero_extend 5)
             (concat (concat ((_ extract 0 0) a!6) ((_ extract 0 0) a!7))
                     ((_ extract 0 0) a!8)))))
(let ((a!5 ((_ extract 0 0) (bvlshr a!4 (bvmul ((_ zero_extend 6) side) #x01))))
      (a!10 ((_ extract 0 0) (bvlshr a!9 (bvmul ((_ zero_extend 6) side) #x01)))))
  (= a!5 a!10)))))
; not the goal
(assert (let ((a!1 (bvlshr (one-pattern (tile-of view-bank
                                         (one-entry view-page pixel-cell))
                                #b10
                                pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (one-pattern (tile-of view-bank
                                         (one-entry view-page pixel-cell))
                                #b01
                                pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (one-pattern (tile-of view-bank
                                         (one-entry view-page pixel-cell))
                                #b00
                                pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!5 (bvlshr (other-pattern (tile-of view-bank
                                           (other-entry view-page pixel-cell))
                                  #b10
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!6 (bvlshr (other-pattern (tile-of view-bank
                                           (other-entry view-page pixel-cell))
                                  #b01
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!7 (bvlshr (other-pattern (tile-of view-bank
                                           (other-entry view-page pixel-cell))
                                  #b00
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!4 (view-colour (concat (concat ((_ extract 0 0) a!1)
                                        ((_ extract 0 0) a!2))
                                ((_ extract 0 0) a!3))))
      (a!8 (view-colour (concat (concat ((_ extract 0 0) a!5)
                                        ((_ extract 0 0) a!6))
                                ((_ extract 0 0) a!7)))))
  (not (= a!4 a!8)))))
(check-sat)
