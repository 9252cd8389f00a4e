; Theorem 8, addresses-packed-4-planes: On packed storage, no two pattern bytes have the same address,
; wherever patterns begin.
; Size: 512 tiles of 4 planes, 16-bit addresses. Wanted: proved.
(set-info :status unsat)
(set-logic QF_BV)
(declare-fun base () (_ BitVec 16))
(declare-fun part-one () (_ BitVec 16))
(declare-fun part-other () (_ BitVec 16))
(declare-fun row-one () (_ BitVec 16))
(declare-fun row-other () (_ BitVec 16))
(declare-fun tile-one () (_ BitVec 16))
(declare-fun tile-other () (_ BitVec 16))
; there are 512 tiles
(assert (and (bvult tile-one #x0200) (bvult tile-other #x0200)))
; a tile has 8 rows
(assert (and (bvult row-one #x0008) (bvult row-other #x0008)))
; a row has a byte for each plane
(assert (and (bvult part-one #x0004) (bvult part-other #x0004)))
; they are two different bytes
(assert (or (distinct tile-one tile-other)
    (distinct row-one row-other)
    (distinct part-one part-other)))
; not the goal
(assert (let ((a!1 (ite (= part-one #x0001)
                (bvadd (bvmul row-one #x0004) #x0001)
                (ite (= part-one #x0002)
                     (bvadd (bvmul row-one #x0004) #x0002)
                     (bvadd (bvmul row-one #x0004) #x0003))))
      (a!3 (ite (= part-other #x0001)
                (bvadd (bvmul row-other #x0004) #x0001)
                (ite (= part-other #x0002)
                     (bvadd (bvmul row-other #x0004) #x0002)
                     (bvadd (bvmul row-other #x0004) #x0003)))))
(let ((a!2 (bvadd base
                  (bvmul tile-one #x0020)
                  (ite (= part-one #x0000)
                       (bvadd (bvmul row-one #x0004) #x0000)
                       a!1)))
      (a!4 (bvadd base
                  (bvmul tile-other #x0020)
                  (ite (= part-other #x0000)
                       (bvadd (bvmul row-other #x0004) #x0000)
                       a!3))))
  (not (distinct a!2 a!4)))))
(check-sat)
