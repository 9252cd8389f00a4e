; Theorem 5, frame-of-the-invariant-1-planes: Where the bytes that the view shows are those of the
; current picture, and the palette shows their plane, every pixel of the frame is the picture's: the
; invariant ends in whole-reveal.
; Size: 512 tiles of 1 plane, 1,024 cells, 2 pages, 2 banks. Wanted: proved.
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
(declare-fun view-colour ((_ BitVec 1)) (_ BitVec 8))
(declare-fun view-page () (_ BitVec 1))
; the viewer sees the current picture
(assert (= (memory-pattern (tile-of view-bank (memory-entry view-page pixel-cell))
                   (bvand side #b0)
                   pixel-row)
   (current-rows-0 pixel-cell pixel-row)))
; the palette shows the side
(assert (let ((a!1 (bvlshr ((_ zero_extend 7) #b0)
                   (bvmul ((_ zero_extend 7) (bvand side #b0)) #x01)))
      (a!2 (bvlshr ((_ zero_extend 7) #b1)
                   (bvmul ((_ zero_extend 7) (bvand side #b0)) #x01))))
  (and (= (view-colour #b0) (shade ((_ extract 0 0) a!1)))
       (= (view-colour #b1) (shade ((_ extract 0 0) a!2))))))
; not the goal
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of view-bank
                                            (memory-entry view-page pixel-cell))
                                   #b0
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 ((_ extract 0 0)
             (bvlshr (current-rows-0 pixel-cell pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column))))))
  (not (= (view-colour ((_ extract 0 0) a!1))
          (ite true (shade a!2) (shade #b0))))))
(check-sat)
