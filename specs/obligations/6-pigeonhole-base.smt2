; Theorem 6, pigeonhole-base: Two items share a place if there is one place.
; Size: any number of tiles and cells below 65,534. Wanted: proved.
(set-info :status unsat)
(set-logic QF_BV)
(declare-fun first () (_ BitVec 16))
(declare-fun second () (_ BitVec 16))
; there is one place
(assert (and (bvult first #x0001) (bvult second #x0001)))
; not the goal
(assert (not (= first second)))
(check-sat)
