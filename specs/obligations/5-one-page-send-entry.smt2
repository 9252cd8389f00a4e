; Theorem 5, one-page-send-entry: Sending one entry of the page that is being seen keeps the
; invariant: the frame stays.
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
(declare-fun sent-cell () (_ BitVec 10))
(declare-fun shadow ((_ BitVec 1) (_ BitVec 9) (_ BitVec 3)) (_ BitVec 8))
(declare-fun side-remembered () (_ BitVec 1))
(declare-fun side-seen () (_ BitVec 1))
(declare-fun tile () (_ BitVec 9))
; the seen side is remembered
(assert (= side-seen side-remembered))
; it is at work while a picture is due
(assert (= owed busy))
; the viewer sees the current picture
(assert (= (memory side-seen (entry cell) row) (current cell row)))
; what is seen is remembered
(assert (= (look cell row) (current cell row)))
; entries are remembered
(assert (= (held cell) (entry cell)))
; a byte is pending or as wanted
(assert (let ((a!1 (and (or (pending #b0 tile row)
                    (= (memory #b0 tile row) (shadow #b0 tile row)))
                (or (pending #b1 tile row)
                    (= (memory #b1 tile row) (shadow #b1 tile row)))))
      (a!2 (or (pending #b0 (entry cell) row)
               (= (memory #b0 (entry cell) row) (shadow #b0 (entry cell) row))))
      (a!3 (or (pending #b1 (entry cell) row)
               (= (memory #b1 (entry cell) row) (shadow #b1 (entry cell) row))))
      (a!4 (or (pending #b0 (placed cell) row)
               (= (memory #b0 (placed cell) row) (shadow #b0 (placed cell) row))))
      (a!5 (or (pending #b1 (placed cell) row)
               (= (memory #b1 (placed cell) row) (shadow #b1 (placed cell) row)))))
  (and (=> (pool tile) a!1)
       (=> (pool (entry cell)) (and a!2 a!3))
       (=> (pool (placed cell)) (and a!4 a!5)))))
; wanted tiles look as what is seen
(assert (= (shadow side-remembered (placed cell) row) (look cell row)))
; what is wanted makes the picture that is due
(assert (=> busy (= (shadow (bvnot side-remembered) (placed cell) row) (due cell row))))
; idle, nothing is pending
(assert (let ((a!1 (or busy
               (and (not (pending #b0 tile row)) (not (pending #b1 tile row)))))
      (a!2 (and (not (pending #b0 (entry cell) row))
                (not (pending #b1 (entry cell) row))))
      (a!3 (and (not (pending #b0 (placed cell) row))
                (not (pending #b1 (placed cell) row)))))
  (and a!1 (or busy a!2) (or busy a!3))))
; entries name the pool or the blank tile
(assert (or (= (entry cell) blank) (pool (entry cell))))
; wanted entries name the pool or the blank tile
(assert (or (= (placed cell) blank) (pool (placed cell))))
; the blank tile is empty
(assert (and (= (memory #b0 blank row) #x00)
     (= (memory #b1 blank row) #x00)
     (= (shadow #b0 blank row) #x00)
     (= (shadow #b1 blank row) #x00)))
; guard: its tile has all of what is being seen
(assert (not (and (distinct (placed sent-cell) blank)
          (pending side-remembered (placed sent-cell) row))))
; not the goal
(assert (let ((a!1 (= (memory side-seen
                      (ite (= cell sent-cell) (placed sent-cell) (entry cell))
                      row)
              (current cell row)))
      (a!2 (and (or (pending #b0 tile row)
                    (= (memory #b0 tile row) (shadow #b0 tile row)))
                (or (pending #b1 tile row)
                    (= (memory #b1 tile row) (shadow #b1 tile row)))))
      (a!3 (=> busy
               (= (shadow (bvnot side-remembered) (placed cell) row)
                  (due cell row))))
      (a!4 (or busy
               (and (not (pending #b0 tile row)) (not (pending #b1 tile row)))))
      (a!5 (or (= (ite (= cell sent-cell) (placed sent-cell) (entry cell))
                  blank)
               (pool (ite (= cell sent-cell) (placed sent-cell) (entry cell))))))
(let ((a!6 (and (= side-seen side-remembered)
                (= owed busy)
                a!1
                (= (look cell row) (current cell row))
                (= (ite (= cell sent-cell) (placed sent-cell) (held cell))
                   (ite (= cell sent-cell) (placed sent-cell) (entry cell)))
                (=> (pool tile) a!2)
                (= (shadow side-remembered (placed cell) row) (look cell row))
                a!3
                a!4
                a!5
                (or (= (placed cell) blank) (pool (placed cell)))
                (= (memory #b0 blank row) #x00)
                (= (memory #b1 blank row) #x00)
                (= (shadow #b0 blank row) #x00)
                (= (shadow #b1 blank row) #x00))))
  (not a!6))))
(check-sat)
