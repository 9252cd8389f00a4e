; Theorem 2, plane-wise-rule-is-enough-3-planes: A pattern byte in a plane that no colour depends on,
; or in a tile that the cell does not name, changes no pixel of the cell.
; Size: 512 tiles of 3 planes, 1,024 cells, 2 pages, 2 banks. Wanted: proved.
(set-info :status unsat)
(set-logic QF_UFBV)
(declare-fun memory-entry ((_ BitVec 1) (_ BitVec 10)) (_ BitVec 9))
(declare-fun memory-pattern
             ((_ BitVec 9) (_ BitVec 2) (_ BitVec 3))
             (_ BitVec 8))
(declare-fun pixel-cell () (_ BitVec 10))
(declare-fun pixel-column () (_ BitVec 3))
(declare-fun pixel-row () (_ BitVec 3))
(declare-fun tile-of ((_ BitVec 1) (_ BitVec 9)) (_ BitVec 9))
(declare-fun view-bank () (_ BitVec 1))
(declare-fun view-colour ((_ BitVec 3)) (_ BitVec 8))
(declare-fun view-page () (_ BitVec 1))
(declare-fun written-byte () (_ BitVec 8))
(declare-fun written-plane () (_ BitVec 2))
(declare-fun written-row () (_ BitVec 3))
(declare-fun written-tile () (_ BitVec 9))
; the plane is hidden, or the tile not named
(assert (let ((a!1 (view-colour (bvxor #b000
                               (bvshl #b001 ((_ zero_extend 1) written-plane)))))
      (a!2 (view-colour (bvxor #b001
                               (bvshl #b001 ((_ zero_extend 1) written-plane)))))
      (a!3 (view-colour (bvxor #b010
                               (bvshl #b001 ((_ zero_extend 1) written-plane)))))
      (a!4 (view-colour (bvxor #b011
                               (bvshl #b001 ((_ zero_extend 1) written-plane)))))
      (a!5 (view-colour (bvxor #b100
                               (bvshl #b001 ((_ zero_extend 1) written-plane)))))
      (a!6 (view-colour (bvxor #b101
                               (bvshl #b001 ((_ zero_extend 1) written-plane)))))
      (a!7 (view-colour (bvxor #b110
                               (bvshl #b001 ((_ zero_extend 1) written-plane)))))
      (a!8 (view-colour (bvxor #b111
                               (bvshl #b001 ((_ zero_extend 1) written-plane))))))
  (or (distinct (tile-of view-bank (memory-entry view-page pixel-cell))
                written-tile)
      (and (= (view-colour #b000) a!1)
           (= (view-colour #b001) a!2)
           (= (view-colour #b010) a!3)
           (= (view-colour #b011) a!4)
           (= (view-colour #b100) a!5)
           (= (view-colour #b101) a!6)
           (= (view-colour #b110) a!7)
           (= (view-colour #b111) a!8)))))
; not the goal
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of view-bank
                                            (memory-entry view-page pixel-cell))
                                   #b10
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (memory-pattern (tile-of view-bank
                                            (memory-entry view-page pixel-cell))
                                   #b01
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (memory-pattern (tile-of view-bank
                                            (memory-entry view-page pixel-cell))
                                   #b00
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!5 (and (= written-tile
                   (tile-of view-bank (memory-entry view-page pixel-cell)))
                (= written-plane #b10)
                (= written-row pixel-row)))
      (a!8 (and (= written-tile
                   (tile-of view-bank (memory-entry view-page pixel-cell)))
                (= written-plane #b01)
                (= written-row pixel-row)))
      (a!11 (and (= written-tile
                    (tile-of view-bank (memory-entry view-page pixel-cell)))
                 (= written-plane #b00)
                 (= written-row pixel-row))))
(let ((a!4 (view-colour (concat (concat ((_ extract 0 0) a!1)
                                        ((_ extract 0 0) a!2))
                                ((_ extract 0 0) a!3))))
      (a!6 (ite a!5
                written-byte
                (memory-pattern (tile-of view-bank
                                         (memory-entry view-page pixel-cell))
                                #b10
                                pixel-row)))
      (a!9 (ite a!8
                written-byte
                (memory-pattern (tile-of view-bank
                                         (memory-entry view-page pixel-cell))
                                #b01
                                pixel-row)))
      (a!12 (ite a!11
                 written-byte
                 (memory-pattern (tile-of view-bank
                                          (memory-entry view-page pixel-cell))
                                 #b00
                                 pixel-row))))
(let ((a!7 ((_ extract 0 0)
             (bvlshr a!6 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!10 ((_ extract 0 0)
              (bvlshr a!9 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!13 ((_ extract 0 0)
              (bvlshr a!12 ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!14 (= a!4 (view-colour (concat (concat a!7 a!10) a!13)))))
  (not a!14))))))
(check-sat)
