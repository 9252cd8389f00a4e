; Theorem 1, hiding-4-planes-depth-1: Two memories that agree, at a pixel, in the bits of the side
; that the palette shows look alike there, whatever the other planes hold.
; Size: 512 tiles of 4 planes, 1,024 cells, 2 pages, 2 banks. Wanted: proved.
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
(declare-fun view-colour ((_ BitVec 4)) (_ BitVec 8))
(declare-fun view-page () (_ BitVec 1))
; the palette shows the side
(assert (let ((a!1 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 4) #x0)
                     (bvmul ((_ zero_extend 6) side) #x01))))
      (a!2 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 4) #x1)
                     (bvmul ((_ zero_extend 6) side) #x01))))
      (a!3 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 4) #x2)
                     (bvmul ((_ zero_extend 6) side) #x01))))
      (a!4 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 4) #x3)
                     (bvmul ((_ zero_extend 6) side) #x01))))
      (a!5 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 4) #x4)
                     (bvmul ((_ zero_extend 6) side) #x01))))
      (a!6 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 4) #x5)
                     (bvmul ((_ zero_extend 6) side) #x01))))
      (a!7 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 4) #x6)
                     (bvmul ((_ zero_extend 6) side) #x01))))
      (a!8 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 4) #x7)
                     (bvmul ((_ zero_extend 6) side) #x01))))
      (a!9 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 4) #x8)
                     (bvmul ((_ zero_extend 6) side) #x01))))
      (a!10 ((_ extract 0 0)
              (bvlshr ((_ zero_extend 4) #x9)
                      (bvmul ((_ zero_extend 6) side) #x01))))
      (a!11 ((_ extract 0 0)
              (bvlshr ((_ zero_extend 4) #xa)
                      (bvmul ((_ zero_extend 6) side) #x01))))
      (a!12 ((_ extract 0 0)
              (bvlshr ((_ zero_extend 4) #xb)
                      (bvmul ((_ zero_extend 6) side) #x01))))
      (a!13 ((_ extract 0 0)
              (bvlshr ((_ zero_extend 4) #xc)
                      (bvmul ((_ zero_extend 6) side) #x01))))
      (a!14 ((_ extract 0 0)
              (bvlshr ((_ zero_extend 4) #xd)
                      (bvmul ((_ zero_extend 6) side) #x01))))
      (a!15 ((_ extract 0 0)
              (bvlshr ((_ zero_extend 4) #xe)
                      (bvmul ((_ zero_extend 6) side) #x01))))
      (a!16 ((_ extract 0 0)
              (bvlshr ((_ zero_extend 4) #xf)
                      (bvmul ((_ zero_extend 6) side) #x01)))))
  (and (= (view-colour #x0) (shade a!1))
       (= (view-colour #x1) (shade a!2))
       (= (view-colour #x2) (shade a!3))
       (= (view-colour #x3) (shade a!4))
       (= (view-colour #x4) (shade a!5))
       (= (view-colour #x5) (shade a!6))
       (= (view-colour #x6) (shade a!7))
       (= (view-colour #x7) (shade a!8))
       (= (view-colour #x8) (shade a!9))
       (= (view-colour #x9) (shade a!10))
       (= (view-colour #xa) (shade a!11))
       (= (view-colour #xb) (shade a!12))
       (= (view-colour #xc) (shade a!13))
       (= (view-colour #xd) (shade a!14))
       (= (view-colour #xe) (shade a!15))
       (= (view-colour #xf) (shade a!16)))))
; both memories hold the same bits of the side at the pixel
(assert (let ((a!1 (bvlshr (one-pattern (tile-of view-bank
                                         (one-entry view-page pixel-cell))
                                #b11
                                pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (one-pattern (tile-of view-bank
                                         (one-entry view-page pixel-cell))
                                #b10
                                pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (one-pattern (tile-of view-bank
                                         (one-entry view-page pixel-cell))
                                #b01
                                pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!4 (bvlshr (one-pattern (tile-of view-bank
                                         (one-entry view-page pixel-cell))
                                #b00
                                pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!7 (bvlshr (other-pattern (tile-of view-bank
                                           (other-entry view-page pixel-cell))
                                  #b11
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!8 (bvlshr (other-pattern (tile-of view-bank
                                           (other-entry view-page pixel-cell))
                                  #b10
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!9 (bvlshr (other-pattern (tile-of view-bank
                                           (other-entry view-page pixel-cell))
                                  #b01
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!10 (bvlshr (other-pattern (tile-of view-bank
                                            (other-entry view-page pixel-cell))
                                   #b00
                                   pixel-row)
                    ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!5 (concat (concat (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2))
                           ((_ extract 0 0) a!3))
                   ((_ extract 0 0) a!4)))
      (a!11 (concat (concat (concat ((_ extract 0 0) a!7) ((_ extract 0 0) a!8))
                            ((_ extract 0 0) a!9))
                    ((_ extract 0 0) a!10))))
(let ((a!6 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 4) a!5)
                     (bvmul ((_ zero_extend 6) side) #x01))))
      (a!12 ((_ extract 0 0)
              (bvlshr ((_ zero_extend 4) a!11)
                      (bvmul ((_ zero_extend 6) side) #x01)))))
  (= a!6 a!12)))))
; not the goal
(assert (let ((a!1 (bvlshr (one-pattern (tile-of view-bank
                                         (one-entry view-page pixel-cell))
                                #b11
                                pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (one-pattern (tile-of view-bank
                                         (one-entry view-page pixel-cell))
                                #b10
                                pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (one-pattern (tile-of view-bank
                                         (one-entry view-page pixel-cell))
                                #b01
                                pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!4 (bvlshr (one-pattern (tile-of view-bank
                                         (one-entry view-page pixel-cell))
                                #b00
                                pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!6 (bvlshr (other-pattern (tile-of view-bank
                                           (other-entry view-page pixel-cell))
                                  #b11
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!7 (bvlshr (other-pattern (tile-of view-bank
                                           (other-entry view-page pixel-cell))
                                  #b10
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!8 (bvlshr (other-pattern (tile-of view-bank
                                           (other-entry view-page pixel-cell))
                                  #b01
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!9 (bvlshr (other-pattern (tile-of view-bank
                                           (other-entry view-page pixel-cell))
                                  #b00
                                  pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!5 (concat (concat (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2))
                           ((_ extract 0 0) a!3))
                   ((_ extract 0 0) a!4)))
      (a!10 (concat (concat (concat ((_ extract 0 0) a!6) ((_ extract 0 0) a!7))
                            ((_ extract 0 0) a!8))
                    ((_ extract 0 0) a!9))))
  (not (= (view-colour a!5) (view-colour a!10))))))
(check-sat)
