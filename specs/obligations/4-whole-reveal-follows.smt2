; Theorem 4, whole-reveal-follows: If the old frame stands until the view changes and the new one from
; then on, exact-reveal and blanking-only leave the frame the current picture or the next, whole.
; Size: any frame of 1,024 cells. Wanted: proved.
(set-info :status unsat)
(set-logic QF_UFBV)
(declare-fun a-byte-is-late () Bool)
(declare-fun current ((_ BitVec 10) (_ BitVec 3) (_ BitVec 3)) (_ BitVec 8))
(declare-fun is-next () Bool)
(declare-fun new-frame ((_ BitVec 10) (_ BitVec 3) (_ BitVec 3)) (_ BitVec 8))
(declare-fun next ((_ BitVec 10) (_ BitVec 3) (_ BitVec 3)) (_ BitVec 8))
(declare-fun old-frame ((_ BitVec 10) (_ BitVec 3) (_ BitVec 3)) (_ BitVec 8))
(declare-fun pixel-cell () (_ BitVec 10))
(declare-fun pixel-column () (_ BitVec 3))
(declare-fun pixel-row () (_ BitVec 3))
(declare-fun seen ((_ BitVec 10) (_ BitVec 3) (_ BitVec 3)) (_ BitVec 8))
(declare-fun view-changed () Bool)
(declare-fun wreck ((_ BitVec 10) (_ BitVec 3) (_ BitVec 3)) (_ BitVec 8))
; what is seen is what stands, unless a late byte wrecks it
(assert (= (seen pixel-cell pixel-row pixel-column)
   (ite a-byte-is-late
        (wreck pixel-cell pixel-row pixel-column)
        (ite view-changed
             (new-frame pixel-cell pixel-row pixel-column)
             (old-frame pixel-cell pixel-row pixel-column)))))
; the current picture was seen
(assert (= (old-frame pixel-cell pixel-row pixel-column)
   (current pixel-cell pixel-row pixel-column)))
; exact-reveal
(assert (=> view-changed
    (= (new-frame pixel-cell pixel-row pixel-column)
       (ite is-next
            (next pixel-cell pixel-row pixel-column)
            (current pixel-cell pixel-row pixel-column)))))
; blanking-only
(assert (not a-byte-is-late))
; not the goal
(assert (not (= (seen pixel-cell pixel-row pixel-column)
        (ite (and view-changed is-next)
             (next pixel-cell pixel-row pixel-column)
             (current pixel-cell pixel-row pixel-column)))))
(check-sat)
