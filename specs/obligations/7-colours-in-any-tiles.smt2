; Theorem 7, colours-in-any-tiles: No palette of one plane shows two independent pictures of 2
; colours, whatever tiles hold them.
; Size: tiles of 1 plane, 2 pages with tiles of their own, every palette. Wanted: refuted.
(set-info :status sat)
(set-logic QF_UFBV)
(declare-fun palette ((_ BitVec 1)) (_ BitVec 4))
(declare-fun value-next-00 () (_ BitVec 1))
(declare-fun value-next-01 () (_ BitVec 1))
(declare-fun value-next-10 () (_ BitVec 1))
(declare-fun value-next-11 () (_ BitVec 1))
(declare-fun value-seen-00 () (_ BitVec 1))
(declare-fun value-seen-01 () (_ BitVec 1))
(declare-fun value-seen-10 () (_ BitVec 1))
(declare-fun value-seen-11 () (_ BitVec 1))
; a pixel shows 0, then 0
(assert (and (= (palette value-seen-00) #x0) (= (palette value-next-00) #x0)))
; a pixel shows 0, then 1
(assert (and (= (palette value-seen-01) #x0) (= (palette value-next-01) #x1)))
; a pixel shows 1, then 0
(assert (and (= (palette value-seen-10) #x1) (= (palette value-next-10) #x0)))
; a pixel shows 1, then 1
(assert (and (= (palette value-seen-11) #x1) (= (palette value-next-11) #x1)))
; not the goal
(assert (not false))
(check-sat)
