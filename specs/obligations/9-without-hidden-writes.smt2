; Theorem 9, without-hidden-writes: In every run of 2 refreshes that keeps all rules but hidden-writes
; and whole-reveal, every frame is whole.
; Size: 4 tiles of 2 planes, 2 cells, 2 pages, 2 banks, 2 rows a tile, a window of 1 cell. Wanted:
; refuted.
(set-info :status sat)
(set-logic QF_UFBV)
(declare-fun drawn-column () (_ BitVec 3))
(declare-fun drawn-row () (_ BitVec 1))
(declare-fun not-background-column () (_ BitVec 3))
(declare-fun not-background-row () (_ BitVec 1))
(declare-fun not-the-picture-column () (_ BitVec 3))
(declare-fun not-the-picture-row () (_ BitVec 1))
(declare-fun picture-rows-0 ((_ BitVec 1) (_ BitVec 1)) (_ BitVec 8))
(declare-fun refresh-0-byte () (_ BitVec 8))
(declare-fun refresh-0-cell () (_ BitVec 1))
(declare-fun refresh-0-cycles () (_ BitVec 32))
(declare-fun refresh-0-entry () (_ BitVec 2))
(declare-fun refresh-0-kind () (_ BitVec 2))
(declare-fun refresh-0-page () (_ BitVec 1))
(declare-fun refresh-0-plane () (_ BitVec 1))
(declare-fun refresh-0-reveals () Bool)
(declare-fun refresh-0-row () (_ BitVec 1))
(declare-fun refresh-0-seen () Bool)
(declare-fun refresh-0-side () (_ BitVec 1))
(declare-fun refresh-0-tile () (_ BitVec 2))
(declare-fun refresh-0-torn () Bool)
(declare-fun refresh-0-wreck
             ((_ BitVec 1) (_ BitVec 1) (_ BitVec 3))
             (_ BitVec 8))
(declare-fun refresh-1-byte () (_ BitVec 8))
(declare-fun refresh-1-cell () (_ BitVec 1))
(declare-fun refresh-1-cycles () (_ BitVec 32))
(declare-fun refresh-1-entry () (_ BitVec 2))
(declare-fun refresh-1-kind () (_ BitVec 2))
(declare-fun refresh-1-page () (_ BitVec 1))
(declare-fun refresh-1-plane () (_ BitVec 1))
(declare-fun refresh-1-reveals () Bool)
(declare-fun refresh-1-row () (_ BitVec 1))
(declare-fun refresh-1-seen () Bool)
(declare-fun refresh-1-side () (_ BitVec 1))
(declare-fun refresh-1-tile () (_ BitVec 2))
(declare-fun refresh-1-torn () Bool)
(declare-fun refresh-1-wreck
             ((_ BitVec 1) (_ BitVec 1) (_ BitVec 3))
             (_ BitVec 8))
(declare-fun set-up-entry ((_ BitVec 1) (_ BitVec 1)) (_ BitVec 2))
(declare-fun set-up-pattern
             ((_ BitVec 2) (_ BitVec 1) (_ BitVec 1))
             (_ BitVec 8))
(declare-fun shade ((_ BitVec 1)) (_ BitVec 8))
; the set-up keeps tile-cap
(assert (let ((a!1 (bvlshr #x6
                   ((_ zero_extend 2)
                     (ite (= #b0 #b0) (set-up-entry #b0 #b0) #b00)))))
  (or (= #b00 (ite (= #b0 #b0) (set-up-entry #b0 #b0) #b00))
      (= ((_ extract 0 0) a!1) #b1))))
; background is seen after the set-up
(assert (let ((a!1 (bvlshr #x6
                   ((_ zero_extend 2)
                     (ite (= #b0 #b0) (set-up-entry #b0 #b0) #b00)))))
(let ((a!2 (ite (= ((_ extract 0 0) a!1) #b1)
                (set-up-pattern (ite (= #b0 #b0) (set-up-entry #b0 #b0) #b00)
                                #b1
                                #b0)
                #x00))
      (a!3 (ite (= ((_ extract 0 0) a!1) #b1)
                (set-up-pattern (ite (= #b0 #b0) (set-up-entry #b0 #b0) #b00)
                                #b0
                                #b0)
                #x00))
      (a!12 (ite (= ((_ extract 0 0) a!1) #b1)
                 (set-up-pattern (ite (= #b0 #b0) (set-up-entry #b0 #b0) #b00)
                                 #b1
                                 #b1)
                 #x00))
      (a!13 (ite (= ((_ extract 0 0) a!1) #b1)
                 (set-up-pattern (ite (= #b0 #b0) (set-up-entry #b0 #b0) #b00)
                                 #b0
                                 #b1)
                 #x00)))
(let ((a!4 (bvlshr ((_ zero_extend 6)
                     (concat ((_ extract 7 7) a!2) ((_ extract 7 7) a!3)))
                   (bvmul ((_ zero_extend 7) #b0) #x01)))
      (a!5 (bvlshr ((_ zero_extend 6)
                     (concat ((_ extract 6 6) a!2) ((_ extract 6 6) a!3)))
                   (bvmul ((_ zero_extend 7) #b0) #x01)))
      (a!6 (bvlshr ((_ zero_extend 6)
                     (concat ((_ extract 5 5) a!2) ((_ extract 5 5) a!3)))
                   (bvmul ((_ zero_extend 7) #b0) #x01)))
      (a!7 (bvlshr ((_ zero_extend 6)
                     (concat ((_ extract 4 4) a!2) ((_ extract 4 4) a!3)))
                   (bvmul ((_ zero_extend 7) #b0) #x01)))
      (a!8 (bvlshr ((_ zero_extend 6)
                     (concat ((_ extract 3 3) a!2) ((_ extract 3 3) a!3)))
                   (bvmul ((_ zero_extend 7) #b0) #x01)))
      (a!9 (bvlshr ((_ zero_extend 6)
                     (concat ((_ extract 2 2) a!2) ((_ extract 2 2) a!3)))
                   (bvmul ((_ zero_extend 7) #b0) #x01)))
      (a!10 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 1 1) a!2) ((_ extract 1 1) a!3)))
                    (bvmul ((_ zero_extend 7) #b0) #x01)))
      (a!11 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 0 0) a!2) ((_ extract 0 0) a!3)))
                    (bvmul ((_ zero_extend 7) #b0) #x01)))
      (a!14 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 7 7) a!12) ((_ extract 7 7) a!13)))
                    (bvmul ((_ zero_extend 7) #b0) #x01)))
      (a!15 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 6 6) a!12) ((_ extract 6 6) a!13)))
                    (bvmul ((_ zero_extend 7) #b0) #x01)))
      (a!16 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 5 5) a!12) ((_ extract 5 5) a!13)))
                    (bvmul ((_ zero_extend 7) #b0) #x01)))
      (a!17 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 4 4) a!12) ((_ extract 4 4) a!13)))
                    (bvmul ((_ zero_extend 7) #b0) #x01)))
      (a!18 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 3 3) a!12) ((_ extract 3 3) a!13)))
                    (bvmul ((_ zero_extend 7) #b0) #x01)))
      (a!19 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 2 2) a!12) ((_ extract 2 2) a!13)))
                    (bvmul ((_ zero_extend 7) #b0) #x01)))
      (a!20 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 1 1) a!12) ((_ extract 1 1) a!13)))
                    (bvmul ((_ zero_extend 7) #b0) #x01)))
      (a!21 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 0 0) a!12) ((_ extract 0 0) a!13)))
                    (bvmul ((_ zero_extend 7) #b0) #x01))))
  (and (= (shade ((_ extract 0 0) a!4)) (shade #b0))
       (= (shade ((_ extract 0 0) a!5)) (shade #b0))
       (= (shade ((_ extract 0 0) a!6)) (shade #b0))
       (= (shade ((_ extract 0 0) a!7)) (shade #b0))
       (= (shade ((_ extract 0 0) a!8)) (shade #b0))
       (= (shade ((_ extract 0 0) a!9)) (shade #b0))
       (= (shade ((_ extract 0 0) a!10)) (shade #b0))
       (= (shade ((_ extract 0 0) a!11)) (shade #b0))
       (= (shade ((_ extract 0 0) a!14)) (shade #b0))
       (= (shade ((_ extract 0 0) a!15)) (shade #b0))
       (= (shade ((_ extract 0 0) a!16)) (shade #b0))
       (= (shade ((_ extract 0 0) a!17)) (shade #b0))
       (= (shade ((_ extract 0 0) a!18)) (shade #b0))
       (= (shade ((_ extract 0 0) a!19)) (shade #b0))
       (= (shade ((_ extract 0 0) a!20)) (shade #b0))
       (= (shade ((_ extract 0 0) a!21)) (shade #b0)))))))
; refresh 0 in its own words
(assert (let ((a!1 (or (= refresh-0-kind #b10)
               (bvule (bvadd #x00000000
                             #x00000014
                             (bvmul #x0000000a #x00000001))
                      refresh-0-cycles)))
      (a!2 (and (= refresh-0-page
                   (ite (= refresh-0-kind #b10) refresh-0-side #b0))
                (= #b0 refresh-0-cell)))
      (a!3 (ite (= #b0 #b0)
                (set-up-entry (ite (= refresh-0-kind #b10) refresh-0-side #b0)
                              #b0)
                #b00))
      (a!10 (bvmul ((_ zero_extend 7)
                     (ite (= refresh-0-kind #b10) refresh-0-side #b0))
                   #x01))
      (a!12 (ite refresh-0-seen
                 (shade ((_ extract 7 7) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!15 (ite refresh-0-seen
                 (shade ((_ extract 6 6) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!18 (ite refresh-0-seen
                 (shade ((_ extract 5 5) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!21 (ite refresh-0-seen
                 (shade ((_ extract 4 4) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!24 (ite refresh-0-seen
                 (shade ((_ extract 3 3) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!27 (ite refresh-0-seen
                 (shade ((_ extract 2 2) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!30 (ite refresh-0-seen
                 (shade ((_ extract 1 1) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!33 (ite refresh-0-seen
                 (shade ((_ extract 0 0) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!40 (ite refresh-0-seen
                 (shade ((_ extract 7 7) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!43 (ite refresh-0-seen
                 (shade ((_ extract 6 6) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!46 (ite refresh-0-seen
                 (shade ((_ extract 5 5) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!49 (ite refresh-0-seen
                 (shade ((_ extract 4 4) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!52 (ite refresh-0-seen
                 (shade ((_ extract 3 3) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!55 (ite refresh-0-seen
                 (shade ((_ extract 2 2) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!58 (ite refresh-0-seen
                 (shade ((_ extract 1 1) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!61 (ite refresh-0-seen
                 (shade ((_ extract 0 0) (picture-rows-0 #b0 #b1)))
                 (shade #b0))))
(let ((a!4 (= refresh-0-tile
              (ite (= refresh-0-kind #b01) (ite a!2 refresh-0-entry a!3) a!3)))
      (a!5 (bvlshr #x6
                   ((_ zero_extend 2)
                     (ite (= refresh-0-kind #b01)
                          (ite a!2 refresh-0-entry a!3)
                          a!3)))))
(let ((a!6 (ite (= ((_ extract 0 0) a!5) #b1)
                (set-up-pattern (ite (= refresh-0-kind #b01)
                                     (ite a!2 refresh-0-entry a!3)
                                     a!3)
                                #b1
                                #b0)
                #x00))
      (a!8 (ite (= ((_ extract 0 0) a!5) #b1)
                (set-up-pattern (ite (= refresh-0-kind #b01)
                                     (ite a!2 refresh-0-entry a!3)
                                     a!3)
                                #b0
                                #b0)
                #x00))
      (a!35 (ite (= ((_ extract 0 0) a!5) #b1)
                 (set-up-pattern (ite (= refresh-0-kind #b01)
                                      (ite a!2 refresh-0-entry a!3)
                                      a!3)
                                 #b1
                                 #b1)
                 #x00))
      (a!37 (ite (= ((_ extract 0 0) a!5) #b1)
                 (set-up-pattern (ite (= refresh-0-kind #b01)
                                      (ite a!2 refresh-0-entry a!3)
                                      a!3)
                                 #b0
                                 #b1)
                 #x00)))
(let ((a!7 (ite (= refresh-0-kind #b00)
                (ite (and a!4 (= refresh-0-plane #b1) (= refresh-0-row #b0))
                     refresh-0-byte
                     a!6)
                a!6))
      (a!9 (ite (= refresh-0-kind #b00)
                (ite (and a!4 (= refresh-0-plane #b0) (= refresh-0-row #b0))
                     refresh-0-byte
                     a!8)
                a!8))
      (a!36 (ite (= refresh-0-kind #b00)
                 (ite (and a!4 (= refresh-0-plane #b1) (= refresh-0-row #b1))
                      refresh-0-byte
                      a!35)
                 a!35))
      (a!38 (ite (= refresh-0-kind #b00)
                 (ite (and a!4 (= refresh-0-plane #b0) (= refresh-0-row #b1))
                      refresh-0-byte
                      a!37)
                 a!37)))
(let ((a!11 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 7 7) a!7) ((_ extract 7 7) a!9)))
                    a!10))
      (a!14 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 6 6) a!7) ((_ extract 6 6) a!9)))
                    a!10))
      (a!17 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 5 5) a!7) ((_ extract 5 5) a!9)))
                    a!10))
      (a!20 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 4 4) a!7) ((_ extract 4 4) a!9)))
                    a!10))
      (a!23 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 3 3) a!7) ((_ extract 3 3) a!9)))
                    a!10))
      (a!26 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 2 2) a!7) ((_ extract 2 2) a!9)))
                    a!10))
      (a!29 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 1 1) a!7) ((_ extract 1 1) a!9)))
                    a!10))
      (a!32 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 0 0) a!7) ((_ extract 0 0) a!9)))
                    a!10))
      (a!39 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 7 7) a!36) ((_ extract 7 7) a!38)))
                    a!10))
      (a!42 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 6 6) a!36) ((_ extract 6 6) a!38)))
                    a!10))
      (a!45 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 5 5) a!36) ((_ extract 5 5) a!38)))
                    a!10))
      (a!48 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 4 4) a!36) ((_ extract 4 4) a!38)))
                    a!10))
      (a!51 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 3 3) a!36) ((_ extract 3 3) a!38)))
                    a!10))
      (a!54 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 2 2) a!36) ((_ extract 2 2) a!38)))
                    a!10))
      (a!57 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 1 1) a!36) ((_ extract 1 1) a!38)))
                    a!10))
      (a!60 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 0 0) a!36) ((_ extract 0 0) a!38)))
                    a!10)))
(let ((a!13 (= (ite a!1
                    (shade ((_ extract 0 0) a!11))
                    (refresh-0-wreck #b0 #b0 #b000))
               a!12))
      (a!16 (= (ite a!1
                    (shade ((_ extract 0 0) a!14))
                    (refresh-0-wreck #b0 #b0 #b001))
               a!15))
      (a!19 (= (ite a!1
                    (shade ((_ extract 0 0) a!17))
                    (refresh-0-wreck #b0 #b0 #b010))
               a!18))
      (a!22 (= (ite a!1
                    (shade ((_ extract 0 0) a!20))
                    (refresh-0-wreck #b0 #b0 #b011))
               a!21))
      (a!25 (= (ite a!1
                    (shade ((_ extract 0 0) a!23))
                    (refresh-0-wreck #b0 #b0 #b100))
               a!24))
      (a!28 (= (ite a!1
                    (shade ((_ extract 0 0) a!26))
                    (refresh-0-wreck #b0 #b0 #b101))
               a!27))
      (a!31 (= (ite a!1
                    (shade ((_ extract 0 0) a!29))
                    (refresh-0-wreck #b0 #b0 #b110))
               a!30))
      (a!34 (= (ite a!1
                    (shade ((_ extract 0 0) a!32))
                    (refresh-0-wreck #b0 #b0 #b111))
               a!33))
      (a!41 (= (ite a!1
                    (shade ((_ extract 0 0) a!39))
                    (refresh-0-wreck #b0 #b1 #b000))
               a!40))
      (a!44 (= (ite a!1
                    (shade ((_ extract 0 0) a!42))
                    (refresh-0-wreck #b0 #b1 #b001))
               a!43))
      (a!47 (= (ite a!1
                    (shade ((_ extract 0 0) a!45))
                    (refresh-0-wreck #b0 #b1 #b010))
               a!46))
      (a!50 (= (ite a!1
                    (shade ((_ extract 0 0) a!48))
                    (refresh-0-wreck #b0 #b1 #b011))
               a!49))
      (a!53 (= (ite a!1
                    (shade ((_ extract 0 0) a!51))
                    (refresh-0-wreck #b0 #b1 #b100))
               a!52))
      (a!56 (= (ite a!1
                    (shade ((_ extract 0 0) a!54))
                    (refresh-0-wreck #b0 #b1 #b101))
               a!55))
      (a!59 (= (ite a!1
                    (shade ((_ extract 0 0) a!57))
                    (refresh-0-wreck #b0 #b1 #b110))
               a!58))
      (a!62 (= (ite a!1
                    (shade ((_ extract 0 0) a!60))
                    (refresh-0-wreck #b0 #b1 #b111))
               a!61)))
  (and (bvule refresh-0-kind #b10)
       (ite a!1
            (= refresh-0-cycles #x00000064)
            (and (bvult #x00000000 refresh-0-cycles)
                 (bvult refresh-0-cycles #x00000064)))
       (ite refresh-0-torn
            (= refresh-0-seen false)
            (and a!13
                 a!16
                 a!19
                 a!22
                 a!25
                 a!28
                 a!31
                 a!34
                 a!41
                 a!44
                 a!47
                 a!50
                 a!53
                 a!56
                 a!59
                 a!62))))))))))
; refresh 1 in its own words
(assert (let ((a!1 (or (= refresh-1-kind #b10)
               (bvule (bvadd #x00000000
                             #x00000014
                             (bvmul #x0000000a #x00000001))
                      refresh-1-cycles)))
      (a!2 (ite (= refresh-1-kind #b10)
                refresh-1-side
                (ite (= refresh-0-kind #b10) refresh-0-side #b0)))
      (a!11 (ite refresh-1-seen
                 (shade ((_ extract 7 7) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!14 (ite refresh-1-seen
                 (shade ((_ extract 6 6) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!17 (ite refresh-1-seen
                 (shade ((_ extract 5 5) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!20 (ite refresh-1-seen
                 (shade ((_ extract 4 4) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!23 (ite refresh-1-seen
                 (shade ((_ extract 3 3) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!26 (ite refresh-1-seen
                 (shade ((_ extract 2 2) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!29 (ite refresh-1-seen
                 (shade ((_ extract 1 1) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!32 (ite refresh-1-seen
                 (shade ((_ extract 0 0) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!39 (ite refresh-1-seen
                 (shade ((_ extract 7 7) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!42 (ite refresh-1-seen
                 (shade ((_ extract 6 6) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!45 (ite refresh-1-seen
                 (shade ((_ extract 5 5) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!48 (ite refresh-1-seen
                 (shade ((_ extract 4 4) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!51 (ite refresh-1-seen
                 (shade ((_ extract 3 3) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!54 (ite refresh-1-seen
                 (shade ((_ extract 2 2) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!57 (ite refresh-1-seen
                 (shade ((_ extract 1 1) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!60 (ite refresh-1-seen
                 (shade ((_ extract 0 0) (picture-rows-0 #b0 #b1)))
                 (shade #b0))))
(let ((a!3 (ite (= refresh-0-kind #b01)
                (ite (and (= refresh-0-page a!2) (= #b0 refresh-0-cell))
                     refresh-0-entry
                     (ite (= #b0 #b0) (set-up-entry a!2 #b0) #b00))
                (ite (= #b0 #b0) (set-up-entry a!2 #b0) #b00))))
(let ((a!4 (ite (= refresh-1-kind #b01)
                (ite (and (= refresh-1-page a!2) (= #b0 refresh-1-cell))
                     refresh-1-entry
                     a!3)
                a!3)))
(let ((a!5 (= ((_ extract 0 0) (bvlshr #x6 ((_ zero_extend 2) a!4))) #b1)))
(let ((a!6 (ite (= refresh-0-kind #b00)
                (ite (and (= refresh-0-tile a!4)
                          (= refresh-0-plane #b1)
                          (= refresh-0-row #b0))
                     refresh-0-byte
                     (ite a!5 (set-up-pattern a!4 #b1 #b0) #x00))
                (ite a!5 (set-up-pattern a!4 #b1 #b0) #x00)))
      (a!8 (ite (= refresh-0-kind #b00)
                (ite (and (= refresh-0-tile a!4)
                          (= refresh-0-plane #b0)
                          (= refresh-0-row #b0))
                     refresh-0-byte
                     (ite a!5 (set-up-pattern a!4 #b0 #b0) #x00))
                (ite a!5 (set-up-pattern a!4 #b0 #b0) #x00)))
      (a!34 (ite (= refresh-0-kind #b00)
                 (ite (and (= refresh-0-tile a!4)
                           (= refresh-0-plane #b1)
                           (= refresh-0-row #b1))
                      refresh-0-byte
                      (ite a!5 (set-up-pattern a!4 #b1 #b1) #x00))
                 (ite a!5 (set-up-pattern a!4 #b1 #b1) #x00)))
      (a!36 (ite (= refresh-0-kind #b00)
                 (ite (and (= refresh-0-tile a!4)
                           (= refresh-0-plane #b0)
                           (= refresh-0-row #b1))
                      refresh-0-byte
                      (ite a!5 (set-up-pattern a!4 #b0 #b1) #x00))
                 (ite a!5 (set-up-pattern a!4 #b0 #b1) #x00))))
(let ((a!7 (ite (= refresh-1-kind #b00)
                (ite (and (= refresh-1-tile a!4)
                          (= refresh-1-plane #b1)
                          (= refresh-1-row #b0))
                     refresh-1-byte
                     a!6)
                a!6))
      (a!9 (ite (= refresh-1-kind #b00)
                (ite (and (= refresh-1-tile a!4)
                          (= refresh-1-plane #b0)
                          (= refresh-1-row #b0))
                     refresh-1-byte
                     a!8)
                a!8))
      (a!35 (ite (= refresh-1-kind #b00)
                 (ite (and (= refresh-1-tile a!4)
                           (= refresh-1-plane #b1)
                           (= refresh-1-row #b1))
                      refresh-1-byte
                      a!34)
                 a!34))
      (a!37 (ite (= refresh-1-kind #b00)
                 (ite (and (= refresh-1-tile a!4)
                           (= refresh-1-plane #b0)
                           (= refresh-1-row #b1))
                      refresh-1-byte
                      a!36)
                 a!36)))
(let ((a!10 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 7 7) a!7) ((_ extract 7 7) a!9)))
                    (bvmul ((_ zero_extend 7) a!2) #x01)))
      (a!13 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 6 6) a!7) ((_ extract 6 6) a!9)))
                    (bvmul ((_ zero_extend 7) a!2) #x01)))
      (a!16 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 5 5) a!7) ((_ extract 5 5) a!9)))
                    (bvmul ((_ zero_extend 7) a!2) #x01)))
      (a!19 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 4 4) a!7) ((_ extract 4 4) a!9)))
                    (bvmul ((_ zero_extend 7) a!2) #x01)))
      (a!22 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 3 3) a!7) ((_ extract 3 3) a!9)))
                    (bvmul ((_ zero_extend 7) a!2) #x01)))
      (a!25 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 2 2) a!7) ((_ extract 2 2) a!9)))
                    (bvmul ((_ zero_extend 7) a!2) #x01)))
      (a!28 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 1 1) a!7) ((_ extract 1 1) a!9)))
                    (bvmul ((_ zero_extend 7) a!2) #x01)))
      (a!31 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 0 0) a!7) ((_ extract 0 0) a!9)))
                    (bvmul ((_ zero_extend 7) a!2) #x01)))
      (a!38 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 7 7) a!35) ((_ extract 7 7) a!37)))
                    (bvmul ((_ zero_extend 7) a!2) #x01)))
      (a!41 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 6 6) a!35) ((_ extract 6 6) a!37)))
                    (bvmul ((_ zero_extend 7) a!2) #x01)))
      (a!44 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 5 5) a!35) ((_ extract 5 5) a!37)))
                    (bvmul ((_ zero_extend 7) a!2) #x01)))
      (a!47 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 4 4) a!35) ((_ extract 4 4) a!37)))
                    (bvmul ((_ zero_extend 7) a!2) #x01)))
      (a!50 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 3 3) a!35) ((_ extract 3 3) a!37)))
                    (bvmul ((_ zero_extend 7) a!2) #x01)))
      (a!53 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 2 2) a!35) ((_ extract 2 2) a!37)))
                    (bvmul ((_ zero_extend 7) a!2) #x01)))
      (a!56 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 1 1) a!35) ((_ extract 1 1) a!37)))
                    (bvmul ((_ zero_extend 7) a!2) #x01)))
      (a!59 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 0 0) a!35) ((_ extract 0 0) a!37)))
                    (bvmul ((_ zero_extend 7) a!2) #x01))))
(let ((a!12 (= (ite a!1
                    (shade ((_ extract 0 0) a!10))
                    (refresh-1-wreck #b0 #b0 #b000))
               a!11))
      (a!15 (= (ite a!1
                    (shade ((_ extract 0 0) a!13))
                    (refresh-1-wreck #b0 #b0 #b001))
               a!14))
      (a!18 (= (ite a!1
                    (shade ((_ extract 0 0) a!16))
                    (refresh-1-wreck #b0 #b0 #b010))
               a!17))
      (a!21 (= (ite a!1
                    (shade ((_ extract 0 0) a!19))
                    (refresh-1-wreck #b0 #b0 #b011))
               a!20))
      (a!24 (= (ite a!1
                    (shade ((_ extract 0 0) a!22))
                    (refresh-1-wreck #b0 #b0 #b100))
               a!23))
      (a!27 (= (ite a!1
                    (shade ((_ extract 0 0) a!25))
                    (refresh-1-wreck #b0 #b0 #b101))
               a!26))
      (a!30 (= (ite a!1
                    (shade ((_ extract 0 0) a!28))
                    (refresh-1-wreck #b0 #b0 #b110))
               a!29))
      (a!33 (= (ite a!1
                    (shade ((_ extract 0 0) a!31))
                    (refresh-1-wreck #b0 #b0 #b111))
               a!32))
      (a!40 (= (ite a!1
                    (shade ((_ extract 0 0) a!38))
                    (refresh-1-wreck #b0 #b1 #b000))
               a!39))
      (a!43 (= (ite a!1
                    (shade ((_ extract 0 0) a!41))
                    (refresh-1-wreck #b0 #b1 #b001))
               a!42))
      (a!46 (= (ite a!1
                    (shade ((_ extract 0 0) a!44))
                    (refresh-1-wreck #b0 #b1 #b010))
               a!45))
      (a!49 (= (ite a!1
                    (shade ((_ extract 0 0) a!47))
                    (refresh-1-wreck #b0 #b1 #b011))
               a!48))
      (a!52 (= (ite a!1
                    (shade ((_ extract 0 0) a!50))
                    (refresh-1-wreck #b0 #b1 #b100))
               a!51))
      (a!55 (= (ite a!1
                    (shade ((_ extract 0 0) a!53))
                    (refresh-1-wreck #b0 #b1 #b101))
               a!54))
      (a!58 (= (ite a!1
                    (shade ((_ extract 0 0) a!56))
                    (refresh-1-wreck #b0 #b1 #b110))
               a!57))
      (a!61 (= (ite a!1
                    (shade ((_ extract 0 0) a!59))
                    (refresh-1-wreck #b0 #b1 #b111))
               a!60)))
  (and (bvule refresh-1-kind #b10)
       (ite a!1
            (= refresh-1-cycles #x00000064)
            (and (bvult #x00000000 refresh-1-cycles)
                 (bvult refresh-1-cycles #x00000064)))
       (ite refresh-1-torn
            (= refresh-1-seen refresh-0-seen)
            (and a!12
                 a!15
                 a!18
                 a!21
                 a!24
                 a!27
                 a!30
                 a!33
                 a!40
                 a!43
                 a!46
                 a!49
                 a!52
                 a!55
                 a!58
                 a!61))))))))))))
; refresh 0 keeps exact-reveal
(assert (let ((a!1 (and (= refresh-0-page
                   (ite (= refresh-0-kind #b10) refresh-0-side #b0))
                (= #b0 refresh-0-cell)))
      (a!2 (ite (= #b0 #b0)
                (set-up-entry (ite (= refresh-0-kind #b10) refresh-0-side #b0)
                              #b0)
                #b00))
      (a!9 (bvmul ((_ zero_extend 7)
                    (ite (= refresh-0-kind #b10) refresh-0-side #b0))
                  #x01))
      (a!11 (ite false
                 (shade ((_ extract 7 7) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!14 (ite false
                 (shade ((_ extract 6 6) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!17 (ite false
                 (shade ((_ extract 5 5) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!20 (ite false
                 (shade ((_ extract 4 4) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!23 (ite false
                 (shade ((_ extract 3 3) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!26 (ite false
                 (shade ((_ extract 2 2) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!29 (ite false
                 (shade ((_ extract 1 1) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!32 (ite false
                 (shade ((_ extract 0 0) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!39 (ite false
                 (shade ((_ extract 7 7) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!42 (ite false
                 (shade ((_ extract 6 6) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!45 (ite false
                 (shade ((_ extract 5 5) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!48 (ite false
                 (shade ((_ extract 4 4) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!51 (ite false
                 (shade ((_ extract 3 3) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!54 (ite false
                 (shade ((_ extract 2 2) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!57 (ite false
                 (shade ((_ extract 1 1) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!60 (ite false
                 (shade ((_ extract 0 0) (picture-rows-0 #b0 #b1)))
                 (shade #b0))))
(let ((a!3 (= refresh-0-tile
              (ite (= refresh-0-kind #b01) (ite a!1 refresh-0-entry a!2) a!2)))
      (a!4 (bvlshr #x6
                   ((_ zero_extend 2)
                     (ite (= refresh-0-kind #b01)
                          (ite a!1 refresh-0-entry a!2)
                          a!2))))
      (a!12 (ite refresh-0-reveals
                 (shade ((_ extract 7 7) (picture-rows-0 #b0 #b0)))
                 a!11))
      (a!15 (ite refresh-0-reveals
                 (shade ((_ extract 6 6) (picture-rows-0 #b0 #b0)))
                 a!14))
      (a!18 (ite refresh-0-reveals
                 (shade ((_ extract 5 5) (picture-rows-0 #b0 #b0)))
                 a!17))
      (a!21 (ite refresh-0-reveals
                 (shade ((_ extract 4 4) (picture-rows-0 #b0 #b0)))
                 a!20))
      (a!24 (ite refresh-0-reveals
                 (shade ((_ extract 3 3) (picture-rows-0 #b0 #b0)))
                 a!23))
      (a!27 (ite refresh-0-reveals
                 (shade ((_ extract 2 2) (picture-rows-0 #b0 #b0)))
                 a!26))
      (a!30 (ite refresh-0-reveals
                 (shade ((_ extract 1 1) (picture-rows-0 #b0 #b0)))
                 a!29))
      (a!33 (ite refresh-0-reveals
                 (shade ((_ extract 0 0) (picture-rows-0 #b0 #b0)))
                 a!32))
      (a!40 (ite refresh-0-reveals
                 (shade ((_ extract 7 7) (picture-rows-0 #b0 #b1)))
                 a!39))
      (a!43 (ite refresh-0-reveals
                 (shade ((_ extract 6 6) (picture-rows-0 #b0 #b1)))
                 a!42))
      (a!46 (ite refresh-0-reveals
                 (shade ((_ extract 5 5) (picture-rows-0 #b0 #b1)))
                 a!45))
      (a!49 (ite refresh-0-reveals
                 (shade ((_ extract 4 4) (picture-rows-0 #b0 #b1)))
                 a!48))
      (a!52 (ite refresh-0-reveals
                 (shade ((_ extract 3 3) (picture-rows-0 #b0 #b1)))
                 a!51))
      (a!55 (ite refresh-0-reveals
                 (shade ((_ extract 2 2) (picture-rows-0 #b0 #b1)))
                 a!54))
      (a!58 (ite refresh-0-reveals
                 (shade ((_ extract 1 1) (picture-rows-0 #b0 #b1)))
                 a!57))
      (a!61 (ite refresh-0-reveals
                 (shade ((_ extract 0 0) (picture-rows-0 #b0 #b1)))
                 a!60)))
(let ((a!5 (ite (= ((_ extract 0 0) a!4) #b1)
                (set-up-pattern (ite (= refresh-0-kind #b01)
                                     (ite a!1 refresh-0-entry a!2)
                                     a!2)
                                #b1
                                #b0)
                #x00))
      (a!7 (ite (= ((_ extract 0 0) a!4) #b1)
                (set-up-pattern (ite (= refresh-0-kind #b01)
                                     (ite a!1 refresh-0-entry a!2)
                                     a!2)
                                #b0
                                #b0)
                #x00))
      (a!34 (ite (= ((_ extract 0 0) a!4) #b1)
                 (set-up-pattern (ite (= refresh-0-kind #b01)
                                      (ite a!1 refresh-0-entry a!2)
                                      a!2)
                                 #b1
                                 #b1)
                 #x00))
      (a!36 (ite (= ((_ extract 0 0) a!4) #b1)
                 (set-up-pattern (ite (= refresh-0-kind #b01)
                                      (ite a!1 refresh-0-entry a!2)
                                      a!2)
                                 #b0
                                 #b1)
                 #x00)))
(let ((a!6 (ite (= refresh-0-kind #b00)
                (ite (and a!3 (= refresh-0-plane #b1) (= refresh-0-row #b0))
                     refresh-0-byte
                     a!5)
                a!5))
      (a!8 (ite (= refresh-0-kind #b00)
                (ite (and a!3 (= refresh-0-plane #b0) (= refresh-0-row #b0))
                     refresh-0-byte
                     a!7)
                a!7))
      (a!35 (ite (= refresh-0-kind #b00)
                 (ite (and a!3 (= refresh-0-plane #b1) (= refresh-0-row #b1))
                      refresh-0-byte
                      a!34)
                 a!34))
      (a!37 (ite (= refresh-0-kind #b00)
                 (ite (and a!3 (= refresh-0-plane #b0) (= refresh-0-row #b1))
                      refresh-0-byte
                      a!36)
                 a!36)))
(let ((a!10 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 7 7) a!6) ((_ extract 7 7) a!8)))
                    a!9))
      (a!13 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 6 6) a!6) ((_ extract 6 6) a!8)))
                    a!9))
      (a!16 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 5 5) a!6) ((_ extract 5 5) a!8)))
                    a!9))
      (a!19 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 4 4) a!6) ((_ extract 4 4) a!8)))
                    a!9))
      (a!22 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 3 3) a!6) ((_ extract 3 3) a!8)))
                    a!9))
      (a!25 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 2 2) a!6) ((_ extract 2 2) a!8)))
                    a!9))
      (a!28 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 1 1) a!6) ((_ extract 1 1) a!8)))
                    a!9))
      (a!31 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 0 0) a!6) ((_ extract 0 0) a!8)))
                    a!9))
      (a!38 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 7 7) a!35) ((_ extract 7 7) a!37)))
                    a!9))
      (a!41 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 6 6) a!35) ((_ extract 6 6) a!37)))
                    a!9))
      (a!44 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 5 5) a!35) ((_ extract 5 5) a!37)))
                    a!9))
      (a!47 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 4 4) a!35) ((_ extract 4 4) a!37)))
                    a!9))
      (a!50 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 3 3) a!35) ((_ extract 3 3) a!37)))
                    a!9))
      (a!53 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 2 2) a!35) ((_ extract 2 2) a!37)))
                    a!9))
      (a!56 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 1 1) a!35) ((_ extract 1 1) a!37)))
                    a!9))
      (a!59 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 0 0) a!35) ((_ extract 0 0) a!37)))
                    a!9)))
(let ((a!62 (and (= (shade ((_ extract 0 0) a!10)) a!12)
                 (= (shade ((_ extract 0 0) a!13)) a!15)
                 (= (shade ((_ extract 0 0) a!16)) a!18)
                 (= (shade ((_ extract 0 0) a!19)) a!21)
                 (= (shade ((_ extract 0 0) a!22)) a!24)
                 (= (shade ((_ extract 0 0) a!25)) a!27)
                 (= (shade ((_ extract 0 0) a!28)) a!30)
                 (= (shade ((_ extract 0 0) a!31)) a!33)
                 (= (shade ((_ extract 0 0) a!38)) a!40)
                 (= (shade ((_ extract 0 0) a!41)) a!43)
                 (= (shade ((_ extract 0 0) a!44)) a!46)
                 (= (shade ((_ extract 0 0) a!47)) a!49)
                 (= (shade ((_ extract 0 0) a!50)) a!52)
                 (= (shade ((_ extract 0 0) a!53)) a!55)
                 (= (shade ((_ extract 0 0) a!56)) a!58)
                 (= (shade ((_ extract 0 0) a!59)) a!61))))
  (=> (= refresh-0-kind #b10) a!62))))))))
; refresh 0 keeps blanking-only
(assert (or (= refresh-0-kind #b10)
    (bvule (bvadd #x00000000 #x00000014 (bvmul #x0000000a #x00000001))
           refresh-0-cycles)))
; refresh 0 keeps own-memory
(assert (let ((a!1 (= ((_ extract 0 0) (bvlshr #x6 ((_ zero_extend 2) refresh-0-tile)))
              #b1)))
  (and (=> (= refresh-0-kind #b00) a!1)
       (=> (= refresh-0-kind #b01) (= #b0 refresh-0-cell)))))
; refresh 0 keeps tile-cap
(assert (let ((a!1 (and (= refresh-0-page
                   (ite (= refresh-0-kind #b10) refresh-0-side #b0))
                (= #b0 refresh-0-cell)))
      (a!2 (ite (= #b0 #b0)
                (set-up-entry (ite (= refresh-0-kind #b10) refresh-0-side #b0)
                              #b0)
                #b00))
      (a!5 (= ((_ extract 0 0) (bvlshr #x6 ((_ zero_extend 2) refresh-0-tile)))
              #b1)))
(let ((a!3 (bvlshr #x6
                   ((_ zero_extend 2)
                     (ite (= refresh-0-kind #b01)
                          (ite a!1 refresh-0-entry a!2)
                          a!2))))
      (a!6 (or (= (ite a!5
                       (set-up-pattern refresh-0-tile
                                       refresh-0-plane
                                       refresh-0-row)
                       #x00)
                  refresh-0-byte)
               a!5)))
(let ((a!4 (or (= #b00
                  (ite (= refresh-0-kind #b01)
                       (ite a!1 refresh-0-entry a!2)
                       a!2))
               (= ((_ extract 0 0) a!3) #b1))))
  (and a!4 (=> (= refresh-0-kind #b00) a!6))))))
; refresh 0 keeps in-order
(assert (=> false refresh-0-seen))
; refresh 1 keeps exact-reveal
(assert (let ((a!1 (ite (= refresh-1-kind #b10)
                refresh-1-side
                (ite (= refresh-0-kind #b10) refresh-0-side #b0)))
      (a!10 (ite refresh-0-seen
                 (shade ((_ extract 7 7) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!13 (ite refresh-0-seen
                 (shade ((_ extract 6 6) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!16 (ite refresh-0-seen
                 (shade ((_ extract 5 5) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!19 (ite refresh-0-seen
                 (shade ((_ extract 4 4) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!22 (ite refresh-0-seen
                 (shade ((_ extract 3 3) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!25 (ite refresh-0-seen
                 (shade ((_ extract 2 2) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!28 (ite refresh-0-seen
                 (shade ((_ extract 1 1) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!31 (ite refresh-0-seen
                 (shade ((_ extract 0 0) (picture-rows-0 #b0 #b0)))
                 (shade #b0)))
      (a!38 (ite refresh-0-seen
                 (shade ((_ extract 7 7) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!41 (ite refresh-0-seen
                 (shade ((_ extract 6 6) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!44 (ite refresh-0-seen
                 (shade ((_ extract 5 5) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!47 (ite refresh-0-seen
                 (shade ((_ extract 4 4) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!50 (ite refresh-0-seen
                 (shade ((_ extract 3 3) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!53 (ite refresh-0-seen
                 (shade ((_ extract 2 2) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!56 (ite refresh-0-seen
                 (shade ((_ extract 1 1) (picture-rows-0 #b0 #b1)))
                 (shade #b0)))
      (a!59 (ite refresh-0-seen
                 (shade ((_ extract 0 0) (picture-rows-0 #b0 #b1)))
                 (shade #b0))))
(let ((a!2 (ite (= refresh-0-kind #b01)
                (ite (and (= refresh-0-page a!1) (= #b0 refresh-0-cell))
                     refresh-0-entry
                     (ite (= #b0 #b0) (set-up-entry a!1 #b0) #b00))
                (ite (= #b0 #b0) (set-up-entry a!1 #b0) #b00)))
      (a!11 (ite refresh-1-reveals
                 (shade ((_ extract 7 7) (picture-rows-0 #b0 #b0)))
                 a!10))
      (a!14 (ite refresh-1-reveals
                 (shade ((_ extract 6 6) (picture-rows-0 #b0 #b0)))
                 a!13))
      (a!17 (ite refresh-1-reveals
                 (shade ((_ extract 5 5) (picture-rows-0 #b0 #b0)))
                 a!16))
      (a!20 (ite refresh-1-reveals
                 (shade ((_ extract 4 4) (picture-rows-0 #b0 #b0)))
                 a!19))
      (a!23 (ite refresh-1-reveals
                 (shade ((_ extract 3 3) (picture-rows-0 #b0 #b0)))
                 a!22))
      (a!26 (ite refresh-1-reveals
                 (shade ((_ extract 2 2) (picture-rows-0 #b0 #b0)))
                 a!25))
      (a!29 (ite refresh-1-reveals
                 (shade ((_ extract 1 1) (picture-rows-0 #b0 #b0)))
                 a!28))
      (a!32 (ite refresh-1-reveals
                 (shade ((_ extract 0 0) (picture-rows-0 #b0 #b0)))
                 a!31))
      (a!39 (ite refresh-1-reveals
                 (shade ((_ extract 7 7) (picture-rows-0 #b0 #b1)))
                 a!38))
      (a!42 (ite refresh-1-reveals
                 (shade ((_ extract 6 6) (picture-rows-0 #b0 #b1)))
                 a!41))
      (a!45 (ite refresh-1-reveals
                 (shade ((_ extract 5 5) (picture-rows-0 #b0 #b1)))
                 a!44))
      (a!48 (ite refresh-1-reveals
                 (shade ((_ extract 4 4) (picture-rows-0 #b0 #b1)))
                 a!47))
      (a!51 (ite refresh-1-reveals
                 (shade ((_ extract 3 3) (picture-rows-0 #b0 #b1)))
                 a!50))
      (a!54 (ite refresh-1-reveals
                 (shade ((_ extract 2 2) (picture-rows-0 #b0 #b1)))
                 a!53))
      (a!57 (ite refresh-1-reveals
                 (shade ((_ extract 1 1) (picture-rows-0 #b0 #b1)))
                 a!56))
      (a!60 (ite refresh-1-reveals
                 (shade ((_ extract 0 0) (picture-rows-0 #b0 #b1)))
                 a!59)))
(let ((a!3 (ite (= refresh-1-kind #b01)
                (ite (and (= refresh-1-page a!1) (= #b0 refresh-1-cell))
                     refresh-1-entry
                     a!2)
                a!2)))
(let ((a!4 (= ((_ extract 0 0) (bvlshr #x6 ((_ zero_extend 2) a!3))) #b1)))
(let ((a!5 (ite (= refresh-0-kind #b00)
                (ite (and (= refresh-0-tile a!3)
                          (= refresh-0-plane #b1)
                          (= refresh-0-row #b0))
                     refresh-0-byte
                     (ite a!4 (set-up-pattern a!3 #b1 #b0) #x00))
                (ite a!4 (set-up-pattern a!3 #b1 #b0) #x00)))
      (a!7 (ite (= refresh-0-kind #b00)
                (ite (and (= refresh-0-tile a!3)
                          (= refresh-0-plane #b0)
                          (= refresh-0-row #b0))
                     refresh-0-byte
                     (ite a!4 (set-up-pattern a!3 #b0 #b0) #x00))
                (ite a!4 (set-up-pattern a!3 #b0 #b0) #x00)))
      (a!33 (ite (= refresh-0-kind #b00)
                 (ite (and (= refresh-0-tile a!3)
                           (= refresh-0-plane #b1)
                           (= refresh-0-row #b1))
                      refresh-0-byte
                      (ite a!4 (set-up-pattern a!3 #b1 #b1) #x00))
                 (ite a!4 (set-up-pattern a!3 #b1 #b1) #x00)))
      (a!35 (ite (= refresh-0-kind #b00)
                 (ite (and (= refresh-0-tile a!3)
                           (= refresh-0-plane #b0)
                           (= refresh-0-row #b1))
                      refresh-0-byte
                      (ite a!4 (set-up-pattern a!3 #b0 #b1) #x00))
                 (ite a!4 (set-up-pattern a!3 #b0 #b1) #x00))))
(let ((a!6 (ite (= refresh-1-kind #b00)
                (ite (and (= refresh-1-tile a!3)
                          (= refresh-1-plane #b1)
                          (= refresh-1-row #b0))
                     refresh-1-byte
                     a!5)
                a!5))
      (a!8 (ite (= refresh-1-kind #b00)
                (ite (and (= refresh-1-tile a!3)
                          (= refresh-1-plane #b0)
                          (= refresh-1-row #b0))
                     refresh-1-byte
                     a!7)
                a!7))
      (a!34 (ite (= refresh-1-kind #b00)
                 (ite (and (= refresh-1-tile a!3)
                           (= refresh-1-plane #b1)
                           (= refresh-1-row #b1))
                      refresh-1-byte
                      a!33)
                 a!33))
      (a!36 (ite (= refresh-1-kind #b00)
                 (ite (and (= refresh-1-tile a!3)
                           (= refresh-1-plane #b0)
                           (= refresh-1-row #b1))
                      refresh-1-byte
                      a!35)
                 a!35)))
(let ((a!9 (bvlshr ((_ zero_extend 6)
                     (concat ((_ extract 7 7) a!6) ((_ extract 7 7) a!8)))
                   (bvmul ((_ zero_extend 7) a!1) #x01)))
      (a!12 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 6 6) a!6) ((_ extract 6 6) a!8)))
                    (bvmul ((_ zero_extend 7) a!1) #x01)))
      (a!15 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 5 5) a!6) ((_ extract 5 5) a!8)))
                    (bvmul ((_ zero_extend 7) a!1) #x01)))
      (a!18 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 4 4) a!6) ((_ extract 4 4) a!8)))
                    (bvmul ((_ zero_extend 7) a!1) #x01)))
      (a!21 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 3 3) a!6) ((_ extract 3 3) a!8)))
                    (bvmul ((_ zero_extend 7) a!1) #x01)))
      (a!24 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 2 2) a!6) ((_ extract 2 2) a!8)))
                    (bvmul ((_ zero_extend 7) a!1) #x01)))
      (a!27 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 1 1) a!6) ((_ extract 1 1) a!8)))
                    (bvmul ((_ zero_extend 7) a!1) #x01)))
      (a!30 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 0 0) a!6) ((_ extract 0 0) a!8)))
                    (bvmul ((_ zero_extend 7) a!1) #x01)))
      (a!37 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 7 7) a!34) ((_ extract 7 7) a!36)))
                    (bvmul ((_ zero_extend 7) a!1) #x01)))
      (a!40 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 6 6) a!34) ((_ extract 6 6) a!36)))
                    (bvmul ((_ zero_extend 7) a!1) #x01)))
      (a!43 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 5 5) a!34) ((_ extract 5 5) a!36)))
                    (bvmul ((_ zero_extend 7) a!1) #x01)))
      (a!46 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 4 4) a!34) ((_ extract 4 4) a!36)))
                    (bvmul ((_ zero_extend 7) a!1) #x01)))
      (a!49 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 3 3) a!34) ((_ extract 3 3) a!36)))
                    (bvmul ((_ zero_extend 7) a!1) #x01)))
      (a!52 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 2 2) a!34) ((_ extract 2 2) a!36)))
                    (bvmul ((_ zero_extend 7) a!1) #x01)))
      (a!55 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 1 1) a!34) ((_ extract 1 1) a!36)))
                    (bvmul ((_ zero_extend 7) a!1) #x01)))
      (a!58 (bvlshr ((_ zero_extend 6)
                      (concat ((_ extract 0 0) a!34) ((_ extract 0 0) a!36)))
                    (bvmul ((_ zero_extend 7) a!1) #x01))))
(let ((a!61 (and (= (shade ((_ extract 0 0) a!9)) a!11)
                 (= (shade ((_ extract 0 0) a!12)) a!14)
                 (= (shade ((_ extract 0 0) a!15)) a!17)
                 (= (shade ((_ extract 0 0) a!18)) a!20)
                 (= (shade ((_ extract 0 0) a!21)) a!23)
                 (= (shade ((_ extract 0 0) a!24)) a!26)
                 (= (shade ((_ extract 0 0) a!27)) a!29)
                 (= (shade ((_ extract 0 0) a!30)) a!32)
                 (= (shade ((_ extract 0 0) a!37)) a!39)
                 (= (shade ((_ extract 0 0) a!40)) a!42)
                 (= (shade ((_ extract 0 0) a!43)) a!45)
                 (= (shade ((_ extract 0 0) a!46)) a!48)
                 (= (shade ((_ extract 0 0) a!49)) a!51)
                 (= (shade ((_ extract 0 0) a!52)) a!54)
                 (= (shade ((_ extract 0 0) a!55)) a!57)
                 (= (shade ((_ extract 0 0) a!58)) a!60))))
  (=> (= refresh-1-kind #b10) a!61))))))))))
; refresh 1 keeps blanking-only
(assert (or (= refresh-1-kind #b10)
    (bvule (bvadd #x00000000 #x00000014 (bvmul #x0000000a #x00000001))
           refresh-1-cycles)))
; refresh 1 keeps own-memory
(assert (let ((a!1 (= ((_ extract 0 0) (bvlshr #x6 ((_ zero_extend 2) refresh-1-tile)))
              #b1)))
  (and (=> (= refresh-1-kind #b00) a!1)
       (=> (= refresh-1-kind #b01) (= #b0 refresh-1-cell)))))
; refresh 1 keeps tile-cap
(assert (let ((a!1 (ite (= refresh-1-kind #b10)
                refresh-1-side
                (ite (= refresh-0-kind #b10) refresh-0-side #b0)))
      (a!5 (= ((_ extract 0 0) (bvlshr #x6 ((_ zero_extend 2) refresh-1-tile)))
              #b1)))
(let ((a!2 (ite (= refresh-0-kind #b01)
                (ite (and (= refresh-0-page a!1) (= #b0 refresh-0-cell))
                     refresh-0-entry
                     (ite (= #b0 #b0) (set-up-entry a!1 #b0) #b00))
                (ite (= #b0 #b0) (set-up-entry a!1 #b0) #b00)))
      (a!6 (ite (= refresh-0-kind #b00)
                (ite (and (= refresh-0-tile refresh-1-tile)
                          (= refresh-0-plane refresh-1-plane)
                          (= refresh-0-row refresh-1-row))
                     refresh-0-byte
                     (ite a!5
                          (set-up-pattern refresh-1-tile
                                          refresh-1-plane
                                          refresh-1-row)
                          #x00))
                (ite a!5
                     (set-up-pattern refresh-1-tile
                                     refresh-1-plane
                                     refresh-1-row)
                     #x00))))
(let ((a!3 (ite (= refresh-1-kind #b01)
                (ite (and (= refresh-1-page a!1) (= #b0 refresh-1-cell))
                     refresh-1-entry
                     a!2)
                a!2)))
(let ((a!4 (= ((_ extract 0 0) (bvlshr #x6 ((_ zero_extend 2) a!3))) #b1)))
  (and (or (= #b00 a!3) a!4)
       (=> (= refresh-1-kind #b00) (or (= a!6 refresh-1-byte) a!5))))))))
; refresh 1 keeps in-order
(assert (=> refresh-0-seen refresh-1-seen))
; the picture is not empty
(assert (let ((a!1 ((_ extract 0 0)
             (bvlshr (picture-rows-0 #b0 drawn-row)
                     ((_ zero_extend 5) (bvnot drawn-column))))))
  (= a!1 #b1)))
; ink and background differ
(assert (distinct (shade #b0) (shade #b1)))
; the picture has its pixels in one row
(assert (and (= (picture-rows-0 #b0 #b0) #x20) (= (picture-rows-0 #b0 #b1) #x00)))
; refresh 0 sends a pattern byte
(assert (= refresh-0-kind #b00))
; refresh 1 sends a pattern byte
(assert (= refresh-1-kind #b00))
; in the end the picture is seen
(assert (and refresh-1-seen (not refresh-1-torn)))
; not the goal
(assert (let ((a!1 (or (= refresh-0-kind #b10)
               (bvule (bvadd #x00000000
                             #x00000014
                             (bvmul #x0000000a #x00000001))
                      refresh-0-cycles)))
      (a!2 (and (= refresh-0-page
                   (ite (= refresh-0-kind #b10) refresh-0-side #b0))
                (= #b0 refresh-0-cell)))
      (a!3 (ite (= #b0 #b0)
                (set-up-entry (ite (= refresh-0-kind #b10) refresh-0-side #b0)
                              #b0)
                #b00))
      (a!12 (bvmul ((_ zero_extend 7)
                     (ite (= refresh-0-kind #b10) refresh-0-side #b0))
                   #x01))
      (a!14 ((_ extract 0 0)
              (bvlshr (picture-rows-0 #b0 not-the-picture-row)
                      ((_ zero_extend 5) (bvnot not-the-picture-column)))))
      (a!23 (or (= refresh-1-kind #b10)
                (bvule (bvadd #x00000000
                              #x00000014
                              (bvmul #x0000000a #x00000001))
                       refresh-1-cycles)))
      (a!24 (ite (= refresh-1-kind #b10)
                 refresh-1-side
                 (ite (= refresh-0-kind #b10) refresh-0-side #b0))))
(let ((a!4 (= refresh-0-tile
              (ite (= refresh-0-kind #b01) (ite a!2 refresh-0-entry a!3) a!3)))
      (a!5 (bvlshr #x6
                   ((_ zero_extend 2)
                     (ite (= refresh-0-kind #b01)
                          (ite a!2 refresh-0-entry a!3)
                          a!3))))
      (a!25 (ite (= refresh-0-kind #b01)
                 (ite (and (= refresh-0-page a!24) (= #b0 refresh-0-cell))
                      refresh-0-entry
                      (ite (= #b0 #b0) (set-up-entry a!24 #b0) #b00))
                 (ite (= #b0 #b0) (set-up-entry a!24 #b0) #b00))))
(let ((a!6 (ite (= ((_ extract 0 0) a!5) #b1)
                (set-up-pattern (ite (= refresh-0-kind #b01)
                                     (ite a!2 refresh-0-entry a!3)
                                     a!3)
                                #b1
                                not-the-picture-row)
                #x00))
      (a!9 (ite (= ((_ extract 0 0) a!5) #b1)
                (set-up-pattern (ite (= refresh-0-kind #b01)
                                     (ite a!2 refresh-0-entry a!3)
                                     a!3)
                                #b0
                                not-the-picture-row)
                #x00))
      (a!15 (ite (= ((_ extract 0 0) a!5) #b1)
                 (set-up-pattern (ite (= refresh-0-kind #b01)
                                      (ite a!2 refresh-0-entry a!3)
                                      a!3)
                                 #b1
                                 not-background-row)
                 #x00))
      (a!18 (ite (= ((_ extract 0 0) a!5) #b1)
                 (set-up-pattern (ite (= refresh-0-kind #b01)
                                      (ite a!2 refresh-0-entry a!3)
                                      a!3)
                                 #b0
                                 not-background-row)
                 #x00))
      (a!26 (ite (= refresh-1-kind #b01)
                 (ite (and (= refresh-1-page a!24) (= #b0 refresh-1-cell))
                      refresh-1-entry
                      a!25)
                 a!25)))
(let ((a!7 (ite (= refresh-0-kind #b00)
                (ite (and a!4
                          (= refresh-0-plane #b1)
                          (= refresh-0-row not-the-picture-row))
                     refresh-0-byte
                     a!6)
                a!6))
      (a!10 (ite (= refresh-0-kind #b00)
                 (ite (and a!4
                           (= refresh-0-plane #b0)
                           (= refresh-0-row not-the-picture-row))
                      refresh-0-byte
                      a!9)
                 a!9))
      (a!16 (ite (= refresh-0-kind #b00)
                 (ite (and a!4
                           (= refresh-0-plane #b1)
                           (= refresh-0-row not-background-row))
                      refresh-0-byte
                      a!15)
                 a!15))
      (a!19 (ite (= refresh-0-kind #b00)
                 (ite (and a!4
                           (= refresh-0-plane #b0)
                           (= refresh-0-row not-background-row))
                      refresh-0-byte
                      a!18)
                 a!18))
      (a!27 (= ((_ extract 0 0) (bvlshr #x6 ((_ zero_extend 2) a!26))) #b1)))
(let ((a!8 ((_ extract 0 0)
             (bvlshr a!7 ((_ zero_extend 5) (bvnot not-the-picture-column)))))
      (a!11 ((_ extract 0 0)
              (bvlshr a!10 ((_ zero_extend 5) (bvnot not-the-picture-column)))))
      (a!17 ((_ extract 0 0)
              (bvlshr a!16 ((_ zero_extend 5) (bvnot not-background-column)))))
      (a!20 ((_ extract 0 0)
              (bvlshr a!19 ((_ zero_extend 5) (bvnot not-background-column)))))
      (a!28 (ite (= refresh-0-kind #b00)
                 (ite (and (= refresh-0-tile a!26)
                           (= refresh-0-plane #b1)
                           (= refresh-0-row not-the-picture-row))
                      refresh-0-byte
                      (ite a!27
                           (set-up-pattern a!26 #b1 not-the-picture-row)
                           #x00))
                 (ite a!27 (set-up-pattern a!26 #b1 not-the-picture-row) #x00)))
      (a!31 (ite (= refresh-0-kind #b00)
                 (ite (and (= refresh-0-tile a!26)
                           (= refresh-0-plane #b0)
                           (= refresh-0-row not-the-picture-row))
                      refresh-0-byte
                      (ite a!27
                           (set-up-pattern a!26 #b0 not-the-picture-row)
                           #x00))
                 (ite a!27 (set-up-pattern a!26 #b0 not-the-picture-row) #x00)))
      (a!35 (ite (= refresh-0-kind #b00)
                 (ite (and (= refresh-0-tile a!26)
                           (= refresh-0-plane #b1)
                           (= refresh-0-row not-background-row))
                      refresh-0-byte
                      (ite a!27
                           (set-up-pattern a!26 #b1 not-background-row)
                           #x00))
                 (ite a!27 (set-up-pattern a!26 #b1 not-background-row) #x00)))
      (a!38 (ite (= refresh-0-kind #b00)
                 (ite (and (= refresh-0-tile a!26)
                           (= refresh-0-plane #b0)
                           (= refresh-0-row not-background-row))
                      refresh-0-byte
                      (ite a!27
                           (set-up-pattern a!26 #b0 not-background-row)
                           #x00))
                 (ite a!27 (set-up-pattern a!26 #b0 not-background-row) #x00))))
(let ((a!13 ((_ extract 0 0)
              (bvlshr ((_ zero_extend 6) (concat a!8 a!11)) a!12)))
      (a!21 ((_ extract 0 0)
              (bvlshr ((_ zero_extend 6) (concat a!17 a!20)) a!12)))
      (a!29 (ite (= refresh-1-kind #b00)
                 (ite (and (= refresh-1-tile a!26)
                           (= refresh-1-plane #b1)
                           (= refresh-1-row not-the-picture-row))
                      refresh-1-byte
                      a!28)
                 a!28))
      (a!32 (ite (= refresh-1-kind #b00)
                 (ite (and (= refresh-1-tile a!26)
                           (= refresh-1-plane #b0)
                           (= refresh-1-row not-the-picture-row))
                      refresh-1-byte
                      a!31)
                 a!31))
      (a!36 (ite (= refresh-1-kind #b00)
                 (ite (and (= refresh-1-tile a!26)
                           (= refresh-1-plane #b1)
                           (= refresh-1-row not-background-row))
                      refresh-1-byte
                      a!35)
                 a!35))
      (a!39 (ite (= refresh-1-kind #b00)
                 (ite (and (= refresh-1-tile a!26)
                           (= refresh-1-plane #b0)
                           (= refresh-1-row not-background-row))
                      refresh-1-byte
                      a!38)
                 a!38)))
(let ((a!22 (and refresh-0-torn
                 (distinct (ite a!1
                                (shade a!13)
                                (refresh-0-wreck #b0
                                                 not-the-picture-row
                                                 not-the-picture-column))
                           (shade a!14))
                 (distinct (ite a!1
                                (shade a!21)
                                (refresh-0-wreck #b0
                                                 not-background-row
                                                 not-background-column))
                           (shade #b0))))
      (a!30 ((_ extract 0 0)
              (bvlshr a!29 ((_ zero_extend 5) (bvnot not-the-picture-column)))))
      (a!33 ((_ extract 0 0)
              (bvlshr a!32 ((_ zero_extend 5) (bvnot not-the-picture-column)))))
      (a!37 ((_ extract 0 0)
              (bvlshr a!36 ((_ zero_extend 5) (bvnot not-background-column)))))
      (a!40 ((_ extract 0 0)
              (bvlshr a!39 ((_ zero_extend 5) (bvnot not-background-column))))))
(let ((a!34 ((_ extract 0 0)
              (bvlshr ((_ zero_extend 6) (concat a!30 a!33))
                      (bvmul ((_ zero_extend 7) a!24) #x01))))
      (a!41 ((_ extract 0 0)
              (bvlshr ((_ zero_extend 6) (concat a!37 a!40))
                      (bvmul ((_ zero_extend 7) a!24) #x01)))))
(let ((a!42 (and refresh-1-torn
                 (distinct (ite a!23
                                (shade a!34)
                                (refresh-1-wreck #b0
                                                 not-the-picture-row
                                                 not-the-picture-column))
                           (shade a!14))
                 (distinct (ite a!23
                                (shade a!41)
                                (refresh-1-wreck #b0
                                                 not-background-row
                                                 not-background-column))
                           (shade #b0)))))
  (not (not (or a!22 a!42)))))))))))))
(check-sat)
