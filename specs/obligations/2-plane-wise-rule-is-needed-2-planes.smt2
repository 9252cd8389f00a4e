; Theorem 2, plane-wise-rule-is-needed-2-planes: A pattern byte that changes its value, but no pixel
; of the cell, is in a plane that no colour depends on, or in a tile that the cell does not name.
; Size: 512 tiles of 2 planes, 1,024 cells, 2 pages, 2 banks. Wanted: refuted.
(set-info :status sat)
(set-logic QF_UFBV)
(declare-fun memory-entry ((_ BitVec 1) (_ BitVec 10)) (_ BitVec 9))
(declare-fun memory-pattern
             ((_ BitVec 9) (_ BitVec 1) (_ BitVec 3))
             (_ BitVec 8))
(declare-fun pixel-cell () (_ BitVec 10))
(declare-fun tile-of ((_ BitVec 1) (_ BitVec 9)) (_ BitVec 9))
(declare-fun view-bank () (_ BitVec 1))
(declare-fun view-colour ((_ BitVec 2)) (_ BitVec 8))
(declare-fun view-page () (_ BitVec 1))
(declare-fun written-byte () (_ BitVec 8))
(declare-fun written-plane () (_ BitVec 1))
(declare-fun written-row () (_ BitVec 3))
(declare-fun written-tile () (_ BitVec 9))
; no pixel of the cell changes
(assert (let ((a!1 ((_ extract 7 7)
             (memory-pattern (tile-of view-bank
                                      (memory-entry view-page pixel-cell))
                             #b1
                             written-row)))
      (a!2 ((_ extract 7 7)
             (memory-pattern (tile-of view-bank
                                      (memory-entry view-page pixel-cell))
                             #b0
                             written-row)))
      (a!3 (and (= written-tile
                   (tile-of view-bank (memory-entry view-page pixel-cell)))
                (= written-plane #b1)
                (= written-row written-row)))
      (a!5 (and (= written-tile
                   (tile-of view-bank (memory-entry view-page pixel-cell)))
                (= written-plane #b0)
                (= written-row written-row)))
      (a!8 ((_ extract 6 6)
             (memory-pattern (tile-of view-bank
                                      (memory-entry view-page pixel-cell))
                             #b1
                             written-row)))
      (a!9 ((_ extract 6 6)
             (memory-pattern (tile-of view-bank
                                      (memory-entry view-page pixel-cell))
                             #b0
                             written-row)))
      (a!11 ((_ extract 5 5)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b1
                              written-row)))
      (a!12 ((_ extract 5 5)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b0
                              written-row)))
      (a!14 ((_ extract 4 4)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b1
                              written-row)))
      (a!15 ((_ extract 4 4)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b0
                              written-row)))
      (a!17 ((_ extract 3 3)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b1
                              written-row)))
      (a!18 ((_ extract 3 3)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b0
                              written-row)))
      (a!20 ((_ extract 2 2)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b1
                              written-row)))
      (a!21 ((_ extract 2 2)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b0
                              written-row)))
      (a!23 ((_ extract 1 1)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b1
                              written-row)))
      (a!24 ((_ extract 1 1)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b0
                              written-row)))
      (a!26 ((_ extract 0 0)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b1
                              written-row)))
      (a!27 ((_ extract 0 0)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b0
                              written-row))))
(let ((a!4 (ite a!3
                written-byte
                (memory-pattern (tile-of view-bank
                                         (memory-entry view-page pixel-cell))
                                #b1
                                written-row)))
      (a!6 (ite a!5
                written-byte
                (memory-pattern (tile-of view-bank
                                         (memory-entry view-page pixel-cell))
                                #b0
                                written-row))))
(let ((a!7 (= (view-colour (concat a!1 a!2))
              (view-colour (concat ((_ extract 7 7) a!4) ((_ extract 7 7) a!6)))))
      (a!10 (= (view-colour (concat a!8 a!9))
               (view-colour (concat ((_ extract 6 6) a!4) ((_ extract 6 6) a!6)))))
      (a!13 (= (view-colour (concat a!11 a!12))
               (view-colour (concat ((_ extract 5 5) a!4) ((_ extract 5 5) a!6)))))
      (a!16 (= (view-colour (concat a!14 a!15))
               (view-colour (concat ((_ extract 4 4) a!4) ((_ extract 4 4) a!6)))))
      (a!19 (= (view-colour (concat a!17 a!18))
               (view-colour (concat ((_ extract 3 3) a!4) ((_ extract 3 3) a!6)))))
      (a!22 (= (view-colour (concat a!20 a!21))
               (view-colour (concat ((_ extract 2 2) a!4) ((_ extract 2 2) a!6)))))
      (a!25 (= (view-colour (concat a!23 a!24))
               (view-colour (concat ((_ extract 1 1) a!4) ((_ extract 1 1) a!6)))))
      (a!28 (= (view-colour (concat a!26 a!27))
               (view-colour (concat ((_ extract 0 0) a!4) ((_ extract 0 0) a!6))))))
  (and a!7 a!10 a!13 a!16 a!19 a!22 a!25 a!28)))))
; the byte changes its value
(assert (distinct (memory-pattern written-tile written-plane written-row) written-byte))
; not the goal
(assert (let ((a!1 (view-colour (bvxor #b00
                               (bvshl #b01 ((_ zero_extend 1) written-plane)))))
      (a!2 (view-colour (bvxor #b01
                               (bvshl #b01 ((_ zero_extend 1) written-plane)))))
      (a!3 (view-colour (bvxor #b10
                               (bvshl #b01 ((_ zero_extend 1) written-plane)))))
      (a!4 (view-colour (bvxor #b11
                               (bvshl #b01 ((_ zero_extend 1) written-plane))))))
(let ((a!5 (or (distinct (tile-of view-bank (memory-entry view-page pixel-cell))
                         written-tile)
               (and (= (view-colour #b00) a!1)
                    (= (view-colour #b01) a!2)
                    (= (view-colour #b10) a!3)
                    (= (view-colour #b11) a!4)))))
  (not a!5))))
(check-sat)
