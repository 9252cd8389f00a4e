; Theorem 6, pigeonhole-step: If n + 2 items had places of their own among n + 1, then n + 1 items
; would have places of their own among n: whoever stands in the last place moves to that of the last
; item. With the base: never.
; Size: any number of tiles and cells below 65,534. Wanted: proved.
(set-info :status unsat)
(set-logic QF_UFBV)
(declare-fun i () (_ BitVec 16))
(declare-fun j () (_ BitVec 16))
(declare-fun n () (_ BitVec 16))
(declare-fun place ((_ BitVec 16)) (_ BitVec 16))
; i and j are two of the first n + 1 items
(assert (and (distinct i j) (bvule i n) (bvule j n)))
; n + 2 items can be counted
(assert (bvult n #xfffe))
; no two items share a place
(assert (let ((a!1 (=> (distinct i (bvadd n #x0001))
               (distinct (place i) (place (bvadd n #x0001)))))
      (a!2 (=> (distinct j (bvadd n #x0001))
               (distinct (place j) (place (bvadd n #x0001))))))
  (and (=> (distinct i j) (distinct (place i) (place j))) a!1 a!2)))
; every item has one of the first n + 1 places
(assert (let ((a!1 (=> (bvule (bvadd n #x0001) (bvadd n #x0001))
               (bvule (place (bvadd n #x0001)) n))))
  (and (=> (bvule i (bvadd n #x0001)) (bvule (place i) n))
       (=> (bvule j (bvadd n #x0001)) (bvule (place j) n))
       a!1)))
; not the goal
(assert (let ((a!1 (ite (= (place i) n) (place (bvadd n #x0001)) (place i)))
      (a!2 (ite (= (place j) n) (place (bvadd n #x0001)) (place j))))
  (not (and (distinct a!1 a!2) (bvult a!1 n) (bvult a!2 n)))))
(check-sat)
