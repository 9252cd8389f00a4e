; Theorem 5, page-flip-start: What the contract says of memory before the set-up, and a view of side
; 0, fulfil the invariant.
; Size: any pool of 512 tiles, one plane, 1,024 cells, 8 rows. Wanted: proved.
(set-info :status unsat)
(set-logic QF_UFBV)
(declare-fun blank () (_ BitVec 9))
(declare-fun busy () Bool)
(declare-fun cell () (_ BitVec 10))
(declare-fun current ((_ BitVec 10) (_ BitVec 3)) (_ BitVec 8))
(declare-fun due ((_ BitVec 10) (_ BitVec 3)) (_ BitVec 8))
(declare-fun entry ((_ BitVec 1) (_ BitVec 10)) (_ BitVec 9))
(declare-fun entry-pending ((_ BitVec 10)) Bool)
(declare-fun half ((_ BitVec 9)) (_ BitVec 1))
(declare-fun memory ((_ BitVec 1) (_ BitVec 9) (_ BitVec 3)) (_ BitVec 8))
(declare-fun owed () Bool)
(declare-fun pending ((_ BitVec 9) (_ BitVec 3)) Bool)
(declare-fun placed ((_ BitVec 1) (_ BitVec 10)) (_ BitVec 9))
(declare-fun pool ((_ BitVec 9)) Bool)
(declare-fun row () (_ BitVec 3))
(declare-fun shadow ((_ BitVec 1) (_ BitVec 9) (_ BitVec 3)) (_ BitVec 8))
(declare-fun side-remembered () (_ BitVec 1))
(declare-fun side-seen () (_ BitVec 1))
(declare-fun tile () (_ BitVec 9))
; patterns are zero in memory
(assert (and (= (memory (bvand #b0 #b0) tile row) #x00)
     (= (memory (bvand #b0 #b0) blank row) #x00)
     (= (memory (bvand #b0 #b0) (entry #b0 cell) row) #x00)
     (= (memory (bvand #b0 #b0) (entry #b1 cell) row) #x00)
     (= (memory (bvand #b1 #b0) tile row) #x00)
     (= (memory (bvand #b1 #b0) blank row) #x00)
     (= (memory (bvand #b1 #b0) (entry #b0 cell) row) #x00)
     (= (memory (bvand #b1 #b0) (entry #b1 cell) row) #x00)))
; entries name the blank tile in memory
(assert (and (= (entry #b0 cell) blank) (= (entry #b1 cell) blank)))
; patterns are zero in the shadow
(assert (and (= (shadow (bvand #b0 #b0) tile row) #x00)
     (= (shadow (bvand #b0 #b0) blank row) #x00)
     (= (shadow (bvand #b0 #b0) (placed #b0 cell) row) #x00)
     (= (shadow (bvand #b0 #b0) (placed #b1 cell) row) #x00)
     (= (shadow (bvand #b1 #b0) tile row) #x00)
     (= (shadow (bvand #b1 #b0) blank row) #x00)
     (= (shadow (bvand #b1 #b0) (placed #b0 cell) row) #x00)
     (= (shadow (bvand #b1 #b0) (placed #b1 cell) row) #x00)))
; entries name the blank tile in the shadow
(assert (and (= (placed #b0 cell) blank) (= (placed #b1 cell) blank)))
; side 0 is shown
(assert (= side-seen #b0))
; side 0 is taken to be seen
(assert (= side-remembered #b0))
; the viewer has the background
(assert (= (current cell row) #x00))
; no picture is due
(assert (not owed))
; it is idle
(assert (not busy))
; no byte is pending
(assert (not (pending tile row)))
; no entry is pending
(assert (not (entry-pending cell)))
; not the goal
(assert (let ((a!1 (=> (and (pool tile) (= (half tile) side-remembered))
               (= (memory (bvand side-remembered #b0) tile row)
                  (shadow (bvand side-remembered #b0) tile row))))
      (a!2 (= (memory (bvand (bvnot side-remembered) #b0) tile row)
              (shadow (bvand (bvnot side-remembered) #b0) tile row)))
      (a!4 (or (entry-pending cell)
               (= (entry (bvnot side-remembered) cell)
                  (placed (bvnot side-remembered) cell))))
      (a!5 (= (shadow (bvand (bvnot side-remembered) #b0)
                      (placed (bvnot side-remembered) cell)
                      row)
              (due cell row)))
      (a!6 (or busy (and (not (pending tile row)) (not (entry-pending cell)))))
      (a!7 (and (pool (entry #b0 cell)) (= #b0 (half (entry #b0 cell)))))
      (a!8 (and (pool (entry #b1 cell)) (= #b1 (half (entry #b1 cell)))))
      (a!9 (and (pool (placed #b0 cell)) (= #b0 (half (placed #b0 cell)))))
      (a!10 (and (pool (placed #b1 cell)) (= #b1 (half (placed #b1 cell))))))
(let ((a!3 (=> (and (pool tile) (= (half tile) (bvnot side-remembered)))
               (or (pending tile row) a!2))))
(let ((a!11 (and (= side-seen side-remembered)
                 (= owed busy)
                 (= (memory (bvand side-seen #b0) (entry side-seen cell) row)
                    (current cell row))
                 a!1
                 (= (entry side-remembered cell) (placed side-remembered cell))
                 a!3
                 a!4
                 (=> busy a!5)
                 a!6
                 (or (= (entry #b0 cell) blank) a!7)
                 (or (= (entry #b1 cell) blank) a!8)
                 (or (= (placed #b0 cell) blank) a!9)
                 (or (= (placed #b1 cell) blank) a!10)
                 (= (memory (bvand #b0 #b0) blank row) #x00)
                 (= (memory (bvand #b1 #b0) blank row) #x00)
                 (= (shadow (bvand #b0 #b0) blank row) #x00)
                 (= (shadow (bvand #b1 #b0) blank row) #x00))))
  (not a!11)))))
(check-sat)
