; Theorem 2, plane-wise-rule-is-needed-3-planes: A pattern byte that changes its value, but no pixel
; of the cell, is in a plane that no colour depends on, or in a tile that the cell does not name.
; Size: 512 tiles of 3 planes, 1,024 cells, 2 pages, 2 banks. Wanted: refuted.
(set-info :status sat)
(set-logic QF_UFBV)
(declare-fun memory-entry ((_ BitVec 1) (_ BitVec 10)) (_ BitVec 9))
(declare-fun memory-pattern
             ((_ BitVec 9) (_ BitVec 2) (_ BitVec 3))
             (_ BitVec 8))
(declare-fun pixel-cell () (_ BitVec 10))
(declare-fun tile-of ((_ BitVec 1) (_ BitVec 9)) (_ BitVec 9))
(declare-fun view-bank () (_ BitVec 1))
(declare-fun view-colour ((_ BitVec 3)) (_ BitVec 8))
(declare-fun view-page () (_ BitVec 1))
(declare-fun written-byte () (_ BitVec 8))
(declare-fun written-plane () (_ BitVec 2))
(declare-fun written-row () (_ BitVec 3))
(declare-fun written-tile () (_ BitVec 9))
; no pixel of the cell changes
(assert (let ((a!1 ((_ extract 7 7)
             (memory-pattern (tile-of view-bank
                                      (memory-entry view-page pixel-cell))
                             #b10
                             written-row)))
      (a!2 ((_ extract 7 7)
             (memory-pattern (tile-of view-bank
                                      (memory-entry view-page pixel-cell))
                             #b01
                             written-row)))
      (a!3 ((_ extract 7 7)
             (memory-pattern (tile-of view-bank
                                      (memory-entry view-page pixel-cell))
                             #b00
                             written-row)))
      (a!4 (and (= written-tile
                   (tile-of view-bank (memory-entry view-page pixel-cell)))
                (= written-plane #b10)
                (= written-row written-row)))
      (a!6 (and (= written-tile
                   (tile-of view-bank (memory-entry view-page pixel-cell)))
                (= written-plane #b01)
                (= written-row written-row)))
      (a!8 (and (= written-tile
                   (tile-of view-bank (memory-entry view-page pixel-cell)))
                (= written-plane #b00)
                (= written-row written-row)))
      (a!12 ((_ extract 6 6)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b10
                              written-row)))
      (a!13 ((_ extract 6 6)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b01
                              written-row)))
      (a!14 ((_ extract 6 6)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b00
                              written-row)))
      (a!17 ((_ extract 5 5)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b10
                              written-row)))
      (a!18 ((_ extract 5 5)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b01
                              written-row)))
      (a!19 ((_ extract 5 5)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b00
                              written-row)))
      (a!22 ((_ extract 4 4)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b10
                              written-row)))
      (a!23 ((_ extract 4 4)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b01
                              written-row)))
      (a!24 ((_ extract 4 4)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b00
                              written-row)))
      (a!27 ((_ extract 3 3)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b10
                              written-row)))
      (a!28 ((_ extract 3 3)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b01
                              written-row)))
      (a!29 ((_ extract 3 3)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b00
                              written-row)))
      (a!32 ((_ extract 2 2)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b10
                              written-row)))
      (a!33 ((_ extract 2 2)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b01
                              written-row)))
      (a!34 ((_ extract 2 2)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b00
                              written-row)))
      (a!37 ((_ extract 1 1)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b10
                              written-row)))
      (a!38 ((_ extract 1 1)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b01
                              written-row)))
      (a!39 ((_ extract 1 1)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b00
                              written-row)))
      (a!42 ((_ extract 0 0)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b10
                              written-row)))
      (a!43 ((_ extract 0 0)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b01
                              written-row)))
      (a!44 ((_ extract 0 0)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b00
                              written-row))))
(let ((a!5 (ite a!4
                written-byte
                (memory-pattern (tile-of view-bank
                                         (memory-entry view-page pixel-cell))
                                #b10
                                written-row)))
      (a!7 (ite a!6
                written-byte
                (memory-pattern (tile-of view-bank
                                         (memory-entry view-page pixel-cell))
                                #b01
                                written-row)))
      (a!9 (ite a!8
                written-byte
                (memory-pattern (tile-of view-bank
                                         (memory-entry view-page pixel-cell))
                                #b00
                                written-row))))
(let ((a!10 (view-colour (concat (concat ((_ extract 7 7) a!5)
                                         ((_ extract 7 7) a!7))
                                 ((_ extract 7 7) a!9))))
      (a!15 (view-colour (concat (concat ((_ extract 6 6) a!5)
                                         ((_ extract 6 6) a!7))
                                 ((_ extract 6 6) a!9))))
      (a!20 (view-colour (concat (concat ((_ extract 5 5) a!5)
                                         ((_ extract 5 5) a!7))
                                 ((_ extract 5 5) a!9))))
      (a!25 (view-colour (concat (concat ((_ extract 4 4) a!5)
                                         ((_ extract 4 4) a!7))
                                 ((_ extract 4 4) a!9))))
      (a!30 (view-colour (concat (concat ((_ extract 3 3) a!5)
                                         ((_ extract 3 3) a!7))
                                 ((_ extract 3 3) a!9))))
      (a!35 (view-colour (concat (concat ((_ extract 2 2) a!5)
                                         ((_ extract 2 2) a!7))
                                 ((_ extract 2 2) a!9))))
      (a!40 (view-colour (concat (concat ((_ extract 1 1) a!5)
                                         ((_ extract 1 1) a!7))
                                 ((_ extract 1 1) a!9))))
      (a!45 (view-colour (concat (concat ((_ extract 0 0) a!5)
                                         ((_ extract 0 0) a!7))
                                 ((_ extract 0 0) a!9)))))
(let ((a!11 (= (view-colour (concat (concat a!1 a!2) a!3)) a!10))
      (a!16 (= (view-colour (concat (concat a!12 a!13) a!14)) a!15))
      (a!21 (= (view-colour (concat (concat a!17 a!18) a!19)) a!20))
      (a!26 (= (view-colour (concat (concat a!22 a!23) a!24)) a!25))
      (a!31 (= (view-colour (concat (concat a!27 a!28) a!29)) a!30))
      (a!36 (= (view-colour (concat (concat a!32 a!33) a!34)) a!35))
      (a!41 (= (view-colour (concat (concat a!37 a!38) a!39)) a!40))
      (a!46 (= (view-colour (concat (concat a!42 a!43) a!44)) a!45)))
  (and a!11 a!16 a!21 a!26 a!31 a!36 a!41 a!46))))))
; the byte changes its value
(assert (distinct (memory-pattern written-tile written-plane written-row) written-byte))
; the plane or side is one of the machine's
(assert (bvult written-plane #b11))
; not the goal
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
(let ((a!9 (or (distinct (tile-of view-bank (memory-entry view-page pixel-cell))
                         written-tile)
               (and (= (view-colour #b000) a!1)
                    (= (view-colour #b001) a!2)
                    (= (view-colour #b010) a!3)
                    (= (view-colour #b011) a!4)
                    (= (view-colour #b100) a!5)
                    (= (view-colour #b101) a!6)
                    (= (view-colour #b110) a!7)
                    (= (view-colour #b111) a!8)))))
  (not a!9))))
(check-sat)
