; Theorem 2, plane-wise-rule-is-needed-4-planes: A pattern byte that changes its value, but no pixel
; of the cell, is in a plane that no colour depends on, or in a tile that the cell does not name.
; Size: 512 tiles of 4 planes, 1,024 cells, 2 pages, 2 banks. Wanted: refuted.
(set-info :status sat)
(set-logic QF_UFBV)
(declare-fun memory-entry ((_ BitVec 1) (_ BitVec 10)) (_ BitVec 9))
(declare-fun memory-pattern
             ((_ BitVec 9) (_ BitVec 2) (_ BitVec 3))
             (_ BitVec 8))
(declare-fun pixel-cell () (_ BitVec 10))
(declare-fun tile-of ((_ BitVec 1) (_ BitVec 9)) (_ BitVec 9))
(declare-fun view-bank () (_ BitVec 1))
(declare-fun view-colour ((_ BitVec 4)) (_ BitVec 8))
(declare-fun view-page () (_ BitVec 1))
(declare-fun written-byte () (_ BitVec 8))
(declare-fun written-plane () (_ BitVec 2))
(declare-fun written-row () (_ BitVec 3))
(declare-fun written-tile () (_ BitVec 9))
; no pixel of the cell changes
(assert (let ((a!1 ((_ extract 7 7)
             (memory-pattern (tile-of view-bank
                                      (memory-entry view-page pixel-cell))
                             #b11
                             written-row)))
      (a!2 ((_ extract 7 7)
             (memory-pattern (tile-of view-bank
                                      (memory-entry view-page pixel-cell))
                             #b10
                             written-row)))
      (a!3 ((_ extract 7 7)
             (memory-pattern (tile-of view-bank
                                      (memory-entry view-page pixel-cell))
                             #b01
                             written-row)))
      (a!4 ((_ extract 7 7)
             (memory-pattern (tile-of view-bank
                                      (memory-entry view-page pixel-cell))
                             #b00
                             written-row)))
      (a!6 (and (= written-tile
                   (tile-of view-bank (memory-entry view-page pixel-cell)))
                (= written-plane #b11)
                (= written-row written-row)))
      (a!8 (and (= written-tile
                   (tile-of view-bank (memory-entry view-page pixel-cell)))
                (= written-plane #b10)
                (= written-row written-row)))
      (a!10 (and (= written-tile
                    (tile-of view-bank (memory-entry view-page pixel-cell)))
                 (= written-plane #b01)
                 (= written-row written-row)))
      (a!12 (and (= written-tile
                    (tile-of view-bank (memory-entry view-page pixel-cell)))
                 (= written-plane #b00)
                 (= written-row written-row)))
      (a!15 ((_ extract 6 6)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b11
                              written-row)))
      (a!16 ((_ extract 6 6)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b10
                              written-row)))
      (a!17 ((_ extract 6 6)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b01
                              written-row)))
      (a!18 ((_ extract 6 6)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b00
                              written-row)))
      (a!21 ((_ extract 5 5)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b11
                              written-row)))
      (a!22 ((_ extract 5 5)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b10
                              written-row)))
      (a!23 ((_ extract 5 5)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b01
                              written-row)))
      (a!24 ((_ extract 5 5)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b00
                              written-row)))
      (a!27 ((_ extract 4 4)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b11
                              written-row)))
      (a!28 ((_ extract 4 4)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b10
                              written-row)))
      (a!29 ((_ extract 4 4)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b01
                              written-row)))
      (a!30 ((_ extract 4 4)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b00
                              written-row)))
      (a!33 ((_ extract 3 3)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b11
                              written-row)))
      (a!34 ((_ extract 3 3)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b10
                              written-row)))
      (a!35 ((_ extract 3 3)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b01
                              written-row)))
      (a!36 ((_ extract 3 3)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b00
                              written-row)))
      (a!39 ((_ extract 2 2)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b11
                              written-row)))
      (a!40 ((_ extract 2 2)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b10
                              written-row)))
      (a!41 ((_ extract 2 2)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b01
                              written-row)))
      (a!42 ((_ extract 2 2)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b00
                              written-row)))
      (a!45 ((_ extract 1 1)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b11
                              written-row)))
      (a!46 ((_ extract 1 1)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b10
                              written-row)))
      (a!47 ((_ extract 1 1)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b01
                              written-row)))
      (a!48 ((_ extract 1 1)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b00
                              written-row)))
      (a!51 ((_ extract 0 0)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b11
                              written-row)))
      (a!52 ((_ extract 0 0)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b10
                              written-row)))
      (a!53 ((_ extract 0 0)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b01
                              written-row)))
      (a!54 ((_ extract 0 0)
              (memory-pattern (tile-of view-bank
                                       (memory-entry view-page pixel-cell))
                              #b00
                              written-row))))
(let ((a!5 (view-colour (concat (concat (concat a!1 a!2) a!3) a!4)))
      (a!7 (ite a!6
                written-byte
                (memory-pattern (tile-of view-bank
                                         (memory-entry view-page pixel-cell))
                                #b11
                                written-row)))
      (a!9 (ite a!8
                written-byte
                (memory-pattern (tile-of view-bank
                                         (memory-entry view-page pixel-cell))
                                #b10
                                written-row)))
      (a!11 (ite a!10
                 written-byte
                 (memory-pattern (tile-of view-bank
                                          (memory-entry view-page pixel-cell))
                                 #b01
                                 written-row)))
      (a!13 (ite a!12
                 written-byte
                 (memory-pattern (tile-of view-bank
                                          (memory-entry view-page pixel-cell))
                                 #b00
                                 written-row)))
      (a!19 (view-colour (concat (concat (concat a!15 a!16) a!17) a!18)))
      (a!25 (view-colour (concat (concat (concat a!21 a!22) a!23) a!24)))
      (a!31 (view-colour (concat (concat (concat a!27 a!28) a!29) a!30)))
      (a!37 (view-colour (concat (concat (concat a!33 a!34) a!35) a!36)))
      (a!43 (view-colour (concat (concat (concat a!39 a!40) a!41) a!42)))
      (a!49 (view-colour (concat (concat (concat a!45 a!46) a!47) a!48)))
      (a!55 (view-colour (concat (concat (concat a!51 a!52) a!53) a!54))))
(let ((a!14 (concat (concat (concat ((_ extract 7 7) a!7) ((_ extract 7 7) a!9))
                            ((_ extract 7 7) a!11))
                    ((_ extract 7 7) a!13)))
      (a!20 (concat (concat (concat ((_ extract 6 6) a!7) ((_ extract 6 6) a!9))
                            ((_ extract 6 6) a!11))
                    ((_ extract 6 6) a!13)))
      (a!26 (concat (concat (concat ((_ extract 5 5) a!7) ((_ extract 5 5) a!9))
                            ((_ extract 5 5) a!11))
                    ((_ extract 5 5) a!13)))
      (a!32 (concat (concat (concat ((_ extract 4 4) a!7) ((_ extract 4 4) a!9))
                            ((_ extract 4 4) a!11))
                    ((_ extract 4 4) a!13)))
      (a!38 (concat (concat (concat ((_ extract 3 3) a!7) ((_ extract 3 3) a!9))
                            ((_ extract 3 3) a!11))
                    ((_ extract 3 3) a!13)))
      (a!44 (concat (concat (concat ((_ extract 2 2) a!7) ((_ extract 2 2) a!9))
                            ((_ extract 2 2) a!11))
                    ((_ extract 2 2) a!13)))
      (a!50 (concat (concat (concat ((_ extract 1 1) a!7) ((_ extract 1 1) a!9))
                            ((_ extract 1 1) a!11))
                    ((_ extract 1 1) a!13)))
      (a!56 (concat (concat (concat ((_ extract 0 0) a!7) ((_ extract 0 0) a!9))
                            ((_ extract 0 0) a!11))
                    ((_ extract 0 0) a!13))))
  (and (= a!5 (view-colour a!14))
       (= a!19 (view-colour a!20))
       (= a!25 (view-colour a!26))
       (= a!31 (view-colour a!32))
       (= a!37 (view-colour a!38))
       (= a!43 (view-colour a!44))
       (= a!49 (view-colour a!50))
       (= a!55 (view-colour a!56)))))))
; the byte changes its value
(assert (distinct (memory-pattern written-tile written-plane written-row) written-byte))
; not the goal
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
(let ((a!17 (or (distinct (tile-of view-bank
                                   (memory-entry view-page pixel-cell))
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
  (not a!17))))
(check-sat)
