; Theorem 6, rank-step: The number of occupied cells before a cell does not fall from cell to cell,
; nor exceed the cells.
; Size: any number of tiles and cells below 65,534. Wanted: proved.
(set-info :status unsat)
(set-logic QF_UFBV)
(declare-fun i () (_ BitVec 16))
(declare-fun k () (_ BitVec 16))
(declare-fun occupied ((_ BitVec 16)) Bool)
(declare-fun rank ((_ BitVec 16)) (_ BitVec 16))
; a rank counts the occupied cells before
(assert (= (rank (bvadd k #x0001)) (bvadd (rank k) (ite (occupied k) #x0001 #x0000))))
; so far ranks did not fall
(assert (bvule (rank i) (rank k)))
; so far ranks were no more than the cells
(assert (bvule (rank k) k))
; the next cell can be counted
(assert (bvult k #xfffe))
; not the goal
(assert (let ((a!1 (and (bvule (rank i) (rank (bvadd k #x0001)))
                (bvule (rank (bvadd k #x0001)) (bvadd k #x0001)))))
  (not a!1)))
(check-sat)
