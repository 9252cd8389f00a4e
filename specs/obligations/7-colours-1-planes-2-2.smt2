; Theorem 7, colours-1-planes-2-2: No palettes show independent pictures of 2 and 2 colours that are
; held in the same tiles.
; Size: tiles of 1 plane, every palette. Wanted: proved.
(set-info :status unsat)
(set-logic QF_UFBV)
(declare-fun palette-0 ((_ BitVec 1)) (_ BitVec 4))
(declare-fun palette-1 ((_ BitVec 1)) (_ BitVec 4))
(declare-fun value-0-0 () (_ BitVec 1))
(declare-fun value-0-1 () (_ BitVec 1))
(declare-fun value-1-0 () (_ BitVec 1))
(declare-fun value-1-1 () (_ BitVec 1))
; every combination of colours has a pixel value that shows it
(assert (and (= (palette-0 value-0-0) #x0)
     (= (palette-1 value-0-0) #x0)
     (= (palette-0 value-0-1) #x0)
     (= (palette-1 value-0-1) #x1)
     (= (palette-0 value-1-0) #x1)
     (= (palette-1 value-1-0) #x0)
     (= (palette-0 value-1-1) #x1)
     (= (palette-1 value-1-1) #x1)))
; not the goal
(assert (not false))
(check-sat)
