; Theorem 7, colours-a-value-for-each-combination: Different combinations of colours have different
; pixel values. With the pigeonhole: pictures of a and b colours held in the same tiles need a * b
; pixel values, so a * b is at most 2^planes.
; Size: up to 8 planes, every palette. Wanted: proved.
(set-info :status unsat)
(set-logic QF_UFBV)
(declare-fun a () (_ BitVec 8))
(declare-fun b () (_ BitVec 8))
(declare-fun c () (_ BitVec 8))
(declare-fun d () (_ BitVec 8))
(declare-fun palette-first ((_ BitVec 8)) (_ BitVec 8))
(declare-fun palette-second ((_ BitVec 8)) (_ BitVec 8))
(declare-fun value ((_ BitVec 8) (_ BitVec 8)) (_ BitVec 8))
; the value of (a, b) shows a and b
(assert (and (= (palette-first (value a b)) a) (= (palette-second (value a b)) b)))
; the value of (c, d) shows c and d
(assert (and (= (palette-first (value c d)) c) (= (palette-second (value c d)) d)))
; the combinations differ
(assert (or (distinct a c) (distinct b d)))
; not the goal
(assert (not (distinct (value a b) (value c d))))
(check-sat)
