; Theorem 2, pattern-rule-is-needed-2-planes: A pattern write that leaves a pixel its colour keeps
; hidden-writes there, under any palette.
; Size: 512 tiles of 2 planes, 1,024 cells, 2 pages, 2 banks. Wanted: proved.
(set-info :status unsat)
(set-logic QF_UFBV)
(declare-fun memory-entry ((_ BitVec 1) (_ BitVec 10)) (_ BitVec 9))
(declare-fun memory-pattern
             ((_ BitVec 9) (_ BitVec 1) (_ BitVec 3))
             (_ BitVec 8))
(declare-fun pixel-cell () (_ BitVec 10))
(declare-fun pixel-column () (_ BitVec 3))
(declare-fun pixel-row () (_ BitVec 3))
(declare-fun tile-of ((_ BitVec 1) (_ BitVec 9)) (_ BitVec 9))
(declare-fun view-bank () (_ BitVec 1))
(declare-fun view-colour ((_ BitVec 2)) (_ BitVec 8))
(declare-fun view-page () (_ BitVec 1))
(declare-fun written-byte () (_ BitVec 8))
(declare-fun written-plane () (_ BitVec 1))
(declare-fun written-row () (_ BitVec 3))
(declare-fun written-tile () (_ BitVec 9))
; the pixel keeps its colour
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of view-bank
                                            (memory-entry view-page pixel-cell))
                                   #b1
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (memory-pattern (tile-of view-bank
                                            (memory-entry view-page pixel-cell))
                                   #b0
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (and (= written-tile
                   (tile-of view-bank (memory-entry view-page pixel-cell)))
                (= written-plane #b1)
                (= written-row pixel-row)))
      (a!6 (and (= written-tile
                   (tile-of view-bank (memory-entry view-page pixel-cell)))
                (= written-plane #b0)
                (= written-row pixel-row))))
(let ((a!4 (ite a!3
                written-byte
                (memory-pattern (tile-of view-bank
                                         (memory-entry view-page pixel-cell))
                                #b1
                                pixel-row)))
      (a!7 (ite a!6
                written-byte
                (memory-pattern (tile-of view-bank
                                         (memory-entry view-page pixel-cell))
                                #b0
                                pixel-row))))
(let ((a!5 ((_ extract 0 0)
             (bvlshr a!4 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!8 ((_ extract 0 0)
             (bvlshr a!7 ((_ zero_extend 5) (bvnot pixel-column))))))
  (= (view-colour (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2)))
     (view-colour (concat a!5 a!8)))))))
; not the goal
(assert (let ((a!1 ((_ extract 0 0)
             (bvlshr (memory-pattern written-tile #b1 written-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!2 ((_ extract 0 0)
             (bvlshr (memory-pattern written-tile #b0 written-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!3 (bvlshr (ite (and (= written-tile written-tile)
                             (= written-plane #b1)
                             (= written-row written-row))
                        written-byte
                        (memory-pattern written-tile #b1 written-row))
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!4 (bvlshr (ite (and (= written-tile written-tile)
                             (= written-plane #b0)
                             (= written-row written-row))
                        written-byte
                        (memory-pattern written-tile #b0 written-row))
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!5 (= (view-colour (concat a!1 a!2))
              (view-colour (concat ((_ extract 0 0) a!3) ((_ extract 0 0) a!4))))))
(let ((a!6 (or (distinct (tile-of view-bank (memory-entry view-page pixel-cell))
                         written-tile)
               (distinct written-row pixel-row)
               (= (concat a!1 a!2)
                  (concat ((_ extract 0 0) a!3) ((_ extract 0 0) a!4)))
               a!5)))
  (not a!6)))))
(check-sat)
