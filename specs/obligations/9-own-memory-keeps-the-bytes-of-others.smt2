; Theorem 9, own-memory-keeps-the-bytes-of-others: A pattern write that keeps own-memory changes no
; byte outside the pool, with tile-cap or without.
; Size: 512 tiles of 4 planes, 1,024 cells, 2 pages, 2 banks. Wanted: proved.
(set-info :status unsat)
(set-logic QF_UFBV)
(declare-fun memory-pattern
             ((_ BitVec 9) (_ BitVec 2) (_ BitVec 3))
             (_ BitVec 8))
(declare-fun p () (_ BitVec 2))
(declare-fun pool () (_ BitVec 512))
(declare-fun r () (_ BitVec 3))
(declare-fun t () (_ BitVec 9))
(declare-fun written-byte () (_ BitVec 8))
(declare-fun written-plane () (_ BitVec 2))
(declare-fun written-row () (_ BitVec 3))
(declare-fun written-tile () (_ BitVec 9))
; own-memory
(assert (= ((_ extract 0 0) (bvlshr pool ((_ zero_extend 503) written-tile))) #b1))
; the tile is somebody else's
(assert (let ((a!1 (= ((_ extract 0 0) (bvlshr pool ((_ zero_extend 503) t))) #b1)))
  (not a!1)))
; not the goal
(assert (let ((a!1 (= (ite (and (= written-tile t)
                        (= written-plane p)
                        (= written-row r))
                   written-byte
                   (memory-pattern t p r))
              (memory-pattern t p r))))
  (not a!1)))
(check-sat)
