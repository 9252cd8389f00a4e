; Theorem 2, map-rule-is-needed-2-planes: A map write that leaves a pixel its colour keeps hidden-
; writes there, under any palette.
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
(declare-fun written-cell () (_ BitVec 10))
(declare-fun written-entry () (_ BitVec 9))
(declare-fun written-page () (_ BitVec 1))
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
      (a!3 (tile-of view-bank
                    (ite (and (= written-page view-page)
                              (= written-cell pixel-cell))
                         written-entry
                         (memory-entry view-page pixel-cell)))))
(let ((a!4 ((_ extract 0 0)
             (bvlshr (memory-pattern a!3 #b1 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!5 ((_ extract 0 0)
             (bvlshr (memory-pattern a!3 #b0 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column))))))
  (= (view-colour (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2)))
     (view-colour (concat a!4 a!5))))))
; not the goal
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of view-bank
                                            (memory-entry view-page
                                                          written-cell))
                                   #b1
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (memory-pattern (tile-of view-bank
                                            (memory-entry view-page
                                                          written-cell))
                                   #b0
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of view-bank written-entry)
                                     #b1
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!4 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of view-bank written-entry)
                                     #b0
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!5 (= (view-colour (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2)))
              (view-colour (concat a!3 a!4)))))
  (not (or (distinct view-page written-page)
           (distinct pixel-cell written-cell)
           a!5)))))
(check-sat)
