; Theorem 5, one-page-start: What the contract says of memory before the set-up, and a view of side 0,
; fulfil the invariant.
; Size: any pool of 512 tiles, two planes, one page, 1,024 cells, 8 rows. Wanted: proved.
(set-info :status unsat)
(set-logic QF_UFBV)
(declare-fun blank () (_ BitVec 9))
(declare-fun busy () Bool)
(declare-fun cell () (_ BitVec 10))
(declare-fun current ((_ BitVec 10) (_ BitVec 3)) (_ BitVec 8))
(declare-fun due ((_ BitVec 10) (_ BitVec 3)) (_ BitVec 8))
(declare-fun entry ((_ BitVec 10)) (_ BitVec 9))
(declare-fun held ((_ BitVec 10)) (_ BitVec 9))
(declare-fun look ((_ BitVec 10) (_ BitVec 3)) (_ BitVec 8))
(declare-fun memory ((_ BitVec 1) (_ BitVec 9) (_ BitVec 3)) (_ BitVec 8))
(declare-fun owed () Bool)
(declare-fun pending ((_ BitVec 1) (_ BitVec 9) (_ BitVec 3)) Bool)
(declare-fun placed ((_ BitVec 10)) (_ BitVec 9))
(declare-fun pool ((_ BitVec 9)) Bool)
(declare-fun row () (_ BitVec 3))
(declare-fun shadow ((_ BitVec 1) (_ BitVec 9) (_ BitVec 3)) (_ BitVec 8))
(declare-fun side-remembered () (_ BitVec 1))
(declare-fun side-seen () (_ BitVec 1))
(declare-fun tile () (_ BitVec 9))
; patterns are zero
(assert (and (= (memory #b0 tile row) #x00)
     (= (memory #b0 blank row) #x00)
     (= (memory #b0 (entry cell) row) #x00)
     (= (memory #b1 tile row) #x00)
     (= (memory #b1 blank row) #x00)
     (= (memory #b1 (entry cell) row) #x00)
     (= (memory #b0 (placed cell) row) #x00)
     (= (memory #b1 (placed cell) row) #x00)))
; the shadow is zero
(assert (and (= (shadow #b0 tile row) #x00)
     (= (shadow #b0 blank row) #x00)
     (= (shadow #b0 (entry cell) row) #x00)
     (= (shadow #b1 tile row) #x00)
     (= (shadow #b1 blank row) #x00)
     (= (shadow #b1 (entry cell) row) #x00)
     (= (shadow #b0 (placed cell) row) #x00)
     (= (shadow #b1 (placed cell) row) #x00)))
; entries name the blank tile in memory
(assert (= (entry cell) blank))
; entries name the blank tile as held
(assert (= (held cell) blank))
; entries name the blank tile as wanted
(assert (= (placed cell) blank))
; side 0 is shown
(assert (= side-seen #b0))
; side 0 is taken to be seen
(assert (= side-remembered #b0))
; the viewer has the background
(assert (= (current cell row) #x00))
; the copy of what is seen is empty
(assert (= (look cell row) #x00))
; no picture is due
(assert (not owed))
; it is idle
(assert (not busy))
; no byte is pending
(assert (not (or (pending #b0 tile row) (pending #b1 tile row))))
; not the goal
(assert (let ((a!1 (and (or (pending #b0 tile row)
                    (= (memory #b0 tile row) (shadow #b0 tile row)))
                (or (pending #b1 tile row)
                    (= (memory #b1 tile row) (shadow #b1 tile row)))))
      (a!2 (=> busy
               (= (shadow (bvnot side-remembered) (placed cell) row)
                  (due cell row))))
      (a!3 (or busy
               (and (not (pending #b0 tile row)) (not (pending #b1 tile row))))))
(let ((a!4 (and (= side-seen side-remembered)
                (= owed busy)
                (= (memory side-seen (entry cell) row) (current cell row))
                (= (look cell row) (current cell row))
                (= (held cell) (entry cell))
                (=> (pool tile) a!1)
                (= (shadow side-remembered (placed cell) row) (look cell row))
                a!2
                a!3
                (or (= (entry cell) blank) (pool (entry cell)))
                (or (= (placed cell) blank) (pool (placed cell)))
                (= (memory #b0 blank row) #x00)
                (= (memory #b1 blank row) #x00)
                (= (shadow #b0 blank row) #x00)
                (= (shadow #b1 blank row) #x00))))
  (not a!4))))
(check-sat)
