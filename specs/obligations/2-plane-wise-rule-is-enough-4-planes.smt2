; Theorem 2, plane-wise-rule-is-enough-4-planes: A pattern byte in a plane that no colour depends on,
; or in a tile that the cell does not name, changes no pixel of the cell.
; Size: 512 tiles of 4 planes, 1,024 cells, 2 pages, 2 banks. Wanted: proved.
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
(declare-fun view-colour ((_ BitVec 4)) (_ BitVec 8))
(declare-fun view-page () (_ BitVec 1))
(declare-fun written-byte () (_ BitVec 8))
(declare-fun written-plane () (_ BitVec 2))
(declare-fun written-row () (_ BitVec 3))
(declare-fun written-tile () (_ BitVec 9))
; the plane is hidden, or the tile not named
(assert (let ((a!1 (view-colour (bvxor #x0
                               (bvshl #x1 ((_ zero_extend 2) written-plane)))))
      (a!2 (view-colour (bvxor #x1
                               (bvshl #x1 ((_ zero_extend 2) written-plane)))))
      (a!3 (view-colour (bvxor #x2
                               (bvshl #x1 ((_ zero_extend 2) written-plane)))))
      (a!4 (view-colour (bvxor #x3
                               (bvshl #x1 ((_ zero_extend 2) written-plane)))))
      (a!5 (view-colour (bvxor #x4
                               (bvshl #x1 ((_ zero_extend 2) written-plane)))))
      (a!6 (view-colour (bvxor #x5
                               (bvshl #x1 ((_ zero_extend 2) written-plane)))))
      (a!7 (view-colour (bvxor #x6
                               (bvshl #x1 ((_ zero_extend 2) written-plane)))))
      (a!8 (view-colour (bvxor #x7
                               (bvshl #x1 ((_ zero_extend 2) written-plane)))))
      (a!9 (view-colour (bvxor #x8
                               (bvshl #x1 ((_ zero_extend 2) written-plane)))))
      (a!10 (view-colour (bvxor #x9
                                (bvshl #x1 ((_ zero_extend 2) written-plane)))))
      (a!11 (view-colour (bvxor #xa
                                (bvshl #x1 ((_ zero_extend 2) written-plane)))))
      (a!12 (view-colour (bvxor #xb
                                (bvshl #x1 ((_ zero_extend 2) written-plane)))))
      (a!13 (view-colour (bvxor #xc
                                (bvshl #x1 ((_ zero_extend 2) written-plane)))))
      (a!14 (view-colour (bvxor #xd
                                (bvshl #x1 ((_ zero_extend 2) written-plane)))))
      (a!15 (view-colour (bvxor #xe
                                (bvshl #x1 ((_ zero_extend 2) written-plane)))))
      (a!16 (view-colour (bvxor #xf
                                (bvshl #x1 ((_ zero_extend 2) written-plane))))))
  (or (distinct (tile-of view-bank (memory-entry view-page pixel-cell))
                written-tile)
      (and (= (view-colour #x0) a!1)
           (= (view-colour #x1) a!2)
           (= (view-colour #x2) a!3)
           (= (view-colour #x3) a!4)
           (= (view-colour #x4) a!5)
           (= (view-colour #x5) a!6)
           (= (view-colour #x6) a!7)
           (= (view-colour #x7) a!8)
           (= (view-colour #x8) a!9)
           (= (view-colour #x9) a!10)
           (= (view-colour #xa) a!11)
           (= (view-colour #xb) a!12)
           (= (view-colour #xc) a!13)
           (= (view-colour #xd) a!14)
           (= (view-colour #xe) a!15)
           (= (view-colour #xf) a!16)))))
; not the goal
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of view-bank
                                            (memory-entry view-page pixel-cell))
                                   #b11
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (memory-pattern (tile-of view-bank
                                            (memory-entry view-page pixel-cell))
                                   #b10
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (memory-pattern (tile-of view-bank
                                            (memory-entry view-page pixel-cell))
                                   #b01
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!4 (bvlshr (memory-pattern (tile-of view-bank
                                            (memory-entry view-page pixel-cell))
                                   #b00
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!6 (and (= written-tile
                   (tile-of view-bank (memory-entry view-page pixel-cell)))
                (= written-plane #b11)
                (= written-row pixel-row)))
      (a!9 (and (= written-tile
                   (tile-of view-bank (memory-entry view-page pixel-cell)))
                (= written-plane #b10)
                (= written-row pixel-row)))
      (a!12 (and (= written-tile
                    (tile-of view-bank (memory-entry view-page pixel-cell)))
                 (= written-plane #b01)
                 (= written-row pixel-row)))
      (a!15 (and (= written-tile
                    (tile-of view-bank (memory-entry view-page pixel-cell)))
                 (= written-plane #b00)
                 (= written-row pixel-row))))
(let ((a!5 (concat (concat (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2))
                           ((_ extract 0 0) a!3))
                   ((_ extract 0 0) a!4)))
      (a!7 (ite a!6
                written-byte
                (memory-pattern (tile-of view-bank
                                         (memory-entry view-page pixel-cell))
                                #b11
                                pixel-row)))
      (a!10 (ite a!9
                 written-byte
                 (memory-pattern (tile-of view-bank
                                          (memory-entry view-page pixel-cell))
                                 #b10
                                 pixel-row)))
      (a!13 (ite a!12
                 written-byte
                 (memory-pattern (tile-of view-bank
                                          (memory-entry view-page pixel-cell))
                                 #b01
                                 pixel-row)))
      (a!16 (ite a!15
                 written-byte
                 (memory-pattern (tile-of view-bank
                                          (memory-entry view-page pixel-cell))
                                 #b00
                                 pixel-row))))
(let ((a!8 ((_ extract 0 0)
             (bvlshr a!7 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!11 ((_ extract 0 0)
              (bvlshr a!10 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!14 ((_ extract 0 0)
              (bvlshr a!13 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!17 ((_ extract 0 0)
              (bvlshr a!16 ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!18 (view-colour (concat (concat (concat a!8 a!11) a!14) a!17))))
  (not (= (view-colour a!5) a!18)))))))
(check-sat)
