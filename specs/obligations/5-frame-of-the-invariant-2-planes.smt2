; Theorem 5, frame-of-the-invariant-2-planes: Where the bytes that the view shows are those of the
; current picture, and the palette shows their plane, every pixel of the frame is the picture's: the
; invariant ends in whole-reveal.
; Size: 512 tiles of 2 planes, 1,024 cells, 2 pages, 2 banks. Wanted: proved.
(set-info :status unsat)
(set-logic QF_UFBV)
(declare-fun current-rows-0 ((_ BitVec 10) (_ BitVec 3)) (_ BitVec 8))
(declare-fun memory-entry ((_ BitVec 1) (_ BitVec 10)) (_ BitVec 9))
(declare-fun memory-pattern
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
; the viewer sees the current picture
(assert (= (memory-pattern (tile-of view-bank (memory-entry view-page pixel-cell))
                   side
                   pixel-row)
   (current-rows-0 pixel-cell pixel-row)))
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
; not the goal
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of view-bank
                                            (memory-entry view-page pixel-cell))
                                   #b1
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (memory-pattern (tile-of view-bank
                                            (memory-entry view-page pixel-cell))
                                   #b0
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 ((_ extract 0 0)
             (bvlshr (current-rows-0 pixel-cell pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!4 (= (view-colour (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2)))
              (ite true (shade a!3) (shade #b0)))))
  (not a!4))))
(check-sat)
