; Theorem 8, addresses-interleaved: On interleaved storage, no two pattern bytes have the same
; address, wherever patterns begin.
; Size: 512 tiles of 1 to 4 planes, 16-bit addresses. Wanted: proved.
(set-info :status unsat)
(set-logic QF_BV)
(declare-fun base () (_ BitVec 16))
(declare-fun part-one () (_ BitVec 16))
(declare-fun part-other () (_ BitVec 16))
(declare-fun planes () (_ BitVec 16))
(declare-fun row-one () (_ BitVec 16))
(declare-fun row-other () (_ BitVec 16))
(declare-fun tile-one () (_ BitVec 16))
(declare-fun tile-other () (_ BitVec 16))
; there are 512 tiles
(assert (and (bvult tile-one #x0200) (bvult tile-other #x0200)))
; a tile has 8 rows
(assert (and (bvult row-one #x0008) (bvult row-other #x0008)))
; a row has a byte for each plane
(assert (and (bvult part-one planes) (bvult part-other planes)))
; they are two different bytes
(assert (or (distinct tile-one tile-other)
    (distinct row-one row-other)
    (distinct part-one part-other)))
; there are 1 to 4 planes
(assert (and (bvule #x0001 planes) (bvule planes #x0004)))
; not the goal
(assert (let ((a!1 (distinct (bvadd base
                            (bvmul tile-one (bvmul #x0008 planes))
                            (bvmul row-one planes)
                            part-one)
                     (bvadd base
                            (bvmul tile-other (bvmul #x0008 planes))
                            (bvmul row-other planes)
                            part-other))))
  (not a!1)))
(check-sat)
