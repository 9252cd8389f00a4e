; Theorem 4, pattern-step-4-planes: A pattern write that is hidden under the views it is judged by
; leaves the old frame standing under the old view, and the new frame under the new one.
; Size: 512 tiles of 4 planes, 1,024 cells, 2 pages, 2 banks. Wanted: proved.
(set-info :status unsat)
(set-logic QF_UFBV)
(declare-fun judged-under-new () Bool)
(declare-fun judged-under-old () Bool)
(declare-fun memory-entry ((_ BitVec 1) (_ BitVec 10)) (_ BitVec 9))
(declare-fun memory-pattern
             ((_ BitVec 9) (_ BitVec 2) (_ BitVec 3))
             (_ BitVec 8))
(declare-fun new-frame ((_ BitVec 10) (_ BitVec 3) (_ BitVec 3)) (_ BitVec 8))
(declare-fun new-view-bank () (_ BitVec 1))
(declare-fun new-view-colour ((_ BitVec 4)) (_ BitVec 8))
(declare-fun new-view-page () (_ BitVec 1))
(declare-fun old-frame ((_ BitVec 10) (_ BitVec 3) (_ BitVec 3)) (_ BitVec 8))
(declare-fun old-view-bank () (_ BitVec 1))
(declare-fun old-view-colour ((_ BitVec 4)) (_ BitVec 8))
(declare-fun old-view-page () (_ BitVec 1))
(declare-fun pixel-cell () (_ BitVec 10))
(declare-fun pixel-column () (_ BitVec 3))
(declare-fun pixel-row () (_ BitVec 3))
(declare-fun tile-of ((_ BitVec 1) (_ BitVec 9)) (_ BitVec 9))
(declare-fun written-byte () (_ BitVec 8))
(declare-fun written-plane () (_ BitVec 2))
(declare-fun written-row () (_ BitVec 3))
(declare-fun written-tile () (_ BitVec 9))
; until the view has changed, writes are hidden under the old one
(assert (let ((a!1 ((_ extract 0 0)
             (bvlshr (memory-pattern written-tile #b11 written-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!2 ((_ extract 0 0)
             (bvlshr (memory-pattern written-tile #b10 written-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!3 ((_ extract 0 0)
             (bvlshr (memory-pattern written-tile #b01 written-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!4 ((_ extract 0 0)
             (bvlshr (memory-pattern written-tile #b00 written-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!5 (bvlshr (ite (and (= written-tile written-tile)
                             (= written-plane #b11)
                             (= written-row written-row))
                        written-byte
                        (memory-pattern written-tile #b11 written-row))
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!6 (bvlshr (ite (and (= written-tile written-tile)
                             (= written-plane #b10)
                             (= written-row written-row))
                        written-byte
                        (memory-pattern written-tile #b10 written-row))
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!7 (bvlshr (ite (and (= written-tile written-tile)
                             (= written-plane #b01)
                             (= written-row written-row))
                        written-byte
                        (memory-pattern written-tile #b01 written-row))
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!8 (bvlshr (ite (and (= written-tile written-tile)
                             (= written-plane #b00)
                             (= written-row written-row))
                        written-byte
                        (memory-pattern written-tile #b00 written-row))
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!9 (concat (concat (concat ((_ extract 0 0) a!5) ((_ extract 0 0) a!6))
                           ((_ extract 0 0) a!7))
                   ((_ extract 0 0) a!8)))
      (a!11 (old-view-colour (concat (concat (concat a!1 a!2) a!3) a!4))))
(let ((a!10 (= (concat (concat (concat a!1 a!2) a!3) a!4) a!9)))
(let ((a!12 (or (distinct (tile-of old-view-bank
                                   (memory-entry old-view-page pixel-cell))
                          written-tile)
                (distinct written-row pixel-row)
                a!10
                (= a!11 (old-view-colour a!9)))))
  (=> judged-under-old a!12))))))
; from its first change on, writes are hidden under the new one
(assert (let ((a!1 ((_ extract 0 0)
             (bvlshr (memory-pattern written-tile #b11 written-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!2 ((_ extract 0 0)
             (bvlshr (memory-pattern written-tile #b10 written-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!3 ((_ extract 0 0)
             (bvlshr (memory-pattern written-tile #b01 written-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!4 ((_ extract 0 0)
             (bvlshr (memory-pattern written-tile #b00 written-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!5 (bvlshr (ite (and (= written-tile written-tile)
                             (= written-plane #b11)
                             (= written-row written-row))
                        written-byte
                        (memory-pattern written-tile #b11 written-row))
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!6 (bvlshr (ite (and (= written-tile written-tile)
                             (= written-plane #b10)
                             (= written-row written-row))
                        written-byte
                        (memory-pattern written-tile #b10 written-row))
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!7 (bvlshr (ite (and (= written-tile written-tile)
                             (= written-plane #b01)
                             (= written-row written-row))
                        written-byte
                        (memory-pattern written-tile #b01 written-row))
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!8 (bvlshr (ite (and (= written-tile written-tile)
                             (= written-plane #b00)
                             (= written-row written-row))
                        written-byte
                        (memory-pattern written-tile #b00 written-row))
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!9 (concat (concat (concat ((_ extract 0 0) a!5) ((_ extract 0 0) a!6))
                           ((_ extract 0 0) a!7))
                   ((_ extract 0 0) a!8)))
      (a!11 (new-view-colour (concat (concat (concat a!1 a!2) a!3) a!4))))
(let ((a!10 (= (concat (concat (concat a!1 a!2) a!3) a!4) a!9)))
(let ((a!12 (or (distinct (tile-of new-view-bank
                                   (memory-entry new-view-page pixel-cell))
                          written-tile)
                (distinct written-row pixel-row)
                a!10
                (= a!11 (new-view-colour a!9)))))
  (=> judged-under-new a!12))))))
; the old frame stood
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          pixel-cell))
                                   #b11
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          pixel-cell))
                                   #b10
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          pixel-cell))
                                   #b01
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!4 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          pixel-cell))
                                   #b00
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!5 (concat (concat (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2))
                           ((_ extract 0 0) a!3))
                   ((_ extract 0 0) a!4))))
  (=> judged-under-old
      (= (old-view-colour a!5) (old-frame pixel-cell pixel-row pixel-column))))))
; the new frame stood
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of new-view-bank
                                            (memory-entry new-view-page
                                                          pixel-cell))
                                   #b11
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (memory-pattern (tile-of new-view-bank
                                            (memory-entry new-view-page
                                                          pixel-cell))
                                   #b10
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (memory-pattern (tile-of new-view-bank
                                            (memory-entry new-view-page
                                                          pixel-cell))
                                   #b01
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!4 (bvlshr (memory-pattern (tile-of new-view-bank
                                            (memory-entry new-view-page
                                                          pixel-cell))
                                   #b00
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!5 (concat (concat (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2))
                           ((_ extract 0 0) a!3))
                   ((_ extract 0 0) a!4))))
  (=> judged-under-new
      (= (new-view-colour a!5) (new-frame pixel-cell pixel-row pixel-column))))))
; not the goal
(assert (let ((a!1 (and (= written-tile
                   (tile-of old-view-bank
                            (memory-entry old-view-page pixel-cell)))
                (= written-plane #b11)
                (= written-row pixel-row)))
      (a!4 (and (= written-tile
                   (tile-of old-view-bank
                            (memory-entry old-view-page pixel-cell)))
                (= written-plane #b10)
                (= written-row pixel-row)))
      (a!7 (and (= written-tile
                   (tile-of old-view-bank
                            (memory-entry old-view-page pixel-cell)))
                (= written-plane #b01)
                (= written-row pixel-row)))
      (a!10 (and (= written-tile
                    (tile-of old-view-bank
                             (memory-entry old-view-page pixel-cell)))
                 (= written-plane #b00)
                 (= written-row pixel-row)))
      (a!14 (and (= written-tile
                    (tile-of new-view-bank
                             (memory-entry new-view-page pixel-cell)))
                 (= written-plane #b11)
                 (= written-row pixel-row)))
      (a!17 (and (= written-tile
                    (tile-of new-view-bank
                             (memory-entry new-view-page pixel-cell)))
                 (= written-plane #b10)
                 (= written-row pixel-row)))
      (a!20 (and (= written-tile
                    (tile-of new-view-bank
                             (memory-entry new-view-page pixel-cell)))
                 (= written-plane #b01)
                 (= written-row pixel-row)))
      (a!23 (and (= written-tile
                    (tile-of new-view-bank
                             (memory-entry new-view-page pixel-cell)))
                 (= written-plane #b00)
                 (= written-row pixel-row))))
(let ((a!2 (ite a!1
                written-byte
                (memory-pattern (tile-of old-view-bank
                                         (memory-entry old-view-page pixel-cell))
                                #b11
                                pixel-row)))
      (a!5 (ite a!4
                written-byte
                (memory-pattern (tile-of old-view-bank
                                         (memory-entry old-view-page pixel-cell))
                                #b10
                                pixel-row)))
      (a!8 (ite a!7
                written-byte
                (memory-pattern (tile-of old-view-bank
                                         (memory-entry old-view-page pixel-cell))
                                #b01
                                pixel-row)))
      (a!11 (ite a!10
                 written-byte
                 (memory-pattern (tile-of old-view-bank
                                          (memory-entry old-view-page
                                                        pixel-cell))
                                 #b00
                                 pixel-row)))
      (a!15 (ite a!14
                 written-byte
                 (memory-pattern (tile-of new-view-bank
                                          (memory-entry new-view-page
                                                        pixel-cell))
                                 #b11
                                 pixel-row)))
      (a!18 (ite a!17
                 written-byte
                 (memory-pattern (tile-of new-view-bank
                                          (memory-entry new-view-page
                                                        pixel-cell))
                                 #b10
                                 pixel-row)))
      (a!21 (ite a!20
                 written-byte
                 (memory-pattern (tile-of new-view-bank
                                          (memory-entry new-view-page
                                                        pixel-cell))
                                 #b01
                                 pixel-row)))
      (a!24 (ite a!23
                 written-byte
                 (memory-pattern (tile-of new-view-bank
                                          (memory-entry new-view-page
                                                        pixel-cell))
                                 #b00
                                 pixel-row))))
(let ((a!3 ((_ extract 0 0)
             (bvlshr a!2 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!6 ((_ extract 0 0)
             (bvlshr a!5 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!9 ((_ extract 0 0)
             (bvlshr a!8 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!12 ((_ extract 0 0)
              (bvlshr a!11 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!16 ((_ extract 0 0)
              (bvlshr a!15 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!19 ((_ extract 0 0)
              (bvlshr a!18 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!22 ((_ extract 0 0)
              (bvlshr a!21 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!25 ((_ extract 0 0)
              (bvlshr a!24 ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!13 (old-view-colour (concat (concat (concat a!3 a!6) a!9) a!12)))
      (a!26 (new-view-colour (concat (concat (concat a!16 a!19) a!22) a!25))))
(let ((a!27 (and (=> judged-under-old
                     (= a!13 (old-frame pixel-cell pixel-row pixel-column)))
                 (=> judged-under-new
                     (= a!26 (new-frame pixel-cell pixel-row pixel-column))))))
  (not a!27)))))))
(check-sat)
