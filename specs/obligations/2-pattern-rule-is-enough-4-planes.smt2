; Theorem 2, pattern-rule-is-enough-4-planes: A pattern write that keeps hidden-writes at a pixel
; leaves it its colour, under any palette.
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
; the write keeps hidden-writes at this pixel
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
      (a!11 (view-colour (concat (concat (concat a!1 a!2) a!3) a!4))))
(let ((a!10 (= (concat (concat (concat a!1 a!2) a!3) a!4) a!9)))
  (or (distinct (tile-of view-bank (memory-entry view-page pixel-cell))
                written-tile)
      (distinct written-row pixel-row)
      a!10
      (= a!11 (view-colour a!9)))))))
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
