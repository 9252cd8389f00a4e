; Theorem 2, pattern-rule-is-needed-3-planes: A pattern write that leaves a pixel its colour keeps
; hidden-writes there, under any palette.
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
; the pixel keeps its colour
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
  (= a!4 (view-colour (concat (concat a!7 a!10) a!13)))))))
; not the goal
(assert (let ((a!1 ((_ extract 0 0)
             (bvlshr (memory-pattern written-tile #b10 written-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!2 ((_ extract 0 0)
             (bvlshr (memory-pattern written-tile #b01 written-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!3 ((_ extract 0 0)
             (bvlshr (memory-pattern written-tile #b00 written-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!4 (bvlshr (ite (and (= written-tile written-tile)
                             (= written-plane #b10)
                             (= written-row written-row))
                        written-byte
                        (memory-pattern written-tile #b10 written-row))
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!5 (bvlshr (ite (and (= written-tile written-tile)
                             (= written-plane #b01)
                             (= written-row written-row))
                        written-byte
                        (memory-pattern written-tile #b01 written-row))
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!6 (bvlshr (ite (and (= written-tile written-tile)
                             (= written-plane #b00)
                             (= written-row written-row))
                        written-byte
                        (memory-pattern written-tile #b00 written-row))
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!7 (= (concat (concat a!1 a!2) a!3)
              (concat (concat ((_ extract 0 0) a!4) ((_ extract 0 0) a!5))
                      ((_ extract 0 0) a!6))))
      (a!8 (view-colour (concat (concat ((_ extract 0 0) a!4)
                                        ((_ extract 0 0) a!5))
                                ((_ extract 0 0) a!6)))))
(let ((a!9 (= (view-colour (concat (concat a!1 a!2) a!3)) a!8)))
(let ((a!10 (or (distinct (tile-of view-bank
                                   (memory-entry view-page pixel-cell))
                          written-tile)
                (distinct written-row pixel-row)
                a!7
                a!9)))
  (not a!10))))))
(check-sat)
