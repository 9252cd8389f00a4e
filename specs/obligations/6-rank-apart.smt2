; Theorem 6, rank-apart: An occupied cell has a lower rank than every later cell, and than the count
; of all: given the tile of its rank, n occupied cells stand in n tiles of their own, the first n of
; the pool.
; Size: any number of tiles and cells below 65,534. Wanted: proved.
(set-info :status unsat)
(set-logic QF_UFBV)
(declare-fun i () (_ BitVec 16))
(declare-fun j () (_ BitVec 16))
(declare-fun occupied ((_ BitVec 16)) Bool)
(declare-fun rank ((_ BitVec 16)) (_ BitVec 16))
; a rank counts the occupied cells before
(assert (= (rank (bvadd i #x0001)) (bvadd (rank i) (ite (occupied i) #x0001 #x0000))))
; ranks do not fall from i + 1 to j
(assert (bvule (rank (bvadd i #x0001)) (rank j)))
; cell i is occupied
(assert (occupied i))
; no rank is more than the cells
(assert (bvule (rank i) i))
; cell i + 1 can be counted
(assert (bvult i #xfffe))
; not the goal
(assert (not (bvult (rank i) (rank j))))
(check-sat)
