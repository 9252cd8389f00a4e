; Theorem 3, reveal-1-planes-depth-1: A side whose page names a place for each cell, and whose planes
; hold the picture there, is seen as exactly that picture once palette, page and bank show the side.
; Size: 512 tiles of 1 plane, 1,024 cells, 2 pages, 2 banks. Wanted: proved.
(set-info :status unsat)
(set-logic QF_UFBV)
(declare-fun memory-entry ((_ BitVec 1) (_ BitVec 10)) (_ BitVec 9))
(declare-fun memory-pattern
             ((_ BitVec 9) (_ BitVec 1) (_ BitVec 3))
             (_ BitVec 8))
(declare-fun new-view-bank () (_ BitVec 1))
(declare-fun new-view-colour ((_ BitVec 1)) (_ BitVec 8))
(declare-fun new-view-page () (_ BitVec 1))
(declare-fun picture-rows-0 ((_ BitVec 10) (_ BitVec 3)) (_ BitVec 8))
(declare-fun pixel-cell () (_ BitVec 10))
(declare-fun pixel-column () (_ BitVec 3))
(declare-fun pixel-row () (_ BitVec 3))
(declare-fun place ((_ BitVec 10)) (_ BitVec 9))
(declare-fun shade ((_ BitVec 1)) (_ BitVec 8))
(declare-fun side () (_ BitVec 1))
(declare-fun side-bank () (_ BitVec 1))
(declare-fun side-page () (_ BitVec 1))
(declare-fun tile-of ((_ BitVec 1) (_ BitVec 9)) (_ BitVec 9))
; the side's page names the place of the cell
(assert (= (tile-of side-bank (memory-entry side-page pixel-cell)) (place pixel-cell)))
; the side's planes hold the picture at that place
(assert (= (memory-pattern (place pixel-cell) (bvadd (bvmul side #b1) #b0) pixel-row)
   (picture-rows-0 pixel-cell pixel-row)))
; the new palette shows the side
(assert (let ((a!1 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 7) #b0)
                     (bvmul ((_ zero_extend 7) side) #x01))))
      (a!2 ((_ extract 0 0)
             (bvlshr ((_ zero_extend 7) #b1)
                     (bvmul ((_ zero_extend 7) side) #x01)))))
  (and (= (new-view-colour #b0) (shade a!1))
       (= (new-view-colour #b1) (shade a!2)))))
; the new view shows the side's page
(assert (= new-view-page side-page))
; the new view shows the side's bank
(assert (= new-view-bank side-bank))
; the plane or side is one of the machine's
(assert (bvult side #b1))
; not the goal
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of new-view-bank
                                            (memory-entry new-view-page
                                                          pixel-cell))
                                   #b0
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 ((_ extract 0 0)
             (bvlshr (picture-rows-0 pixel-cell pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column))))))
  (not (= (new-view-colour ((_ extract 0 0) a!1)) (shade a!2)))))
(check-sat)
