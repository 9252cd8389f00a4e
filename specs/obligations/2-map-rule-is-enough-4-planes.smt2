; Theorem 2, map-rule-is-enough-4-planes: A map write that keeps hidden-writes at a pixel leaves it
; its colour, under any palette.
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
(declare-fun written-cell () (_ BitVec 10))
(declare-fun written-entry () (_ BitVec 9))
(declare-fun written-page () (_ BitVec 1))
; the write keeps hidden-writes at this pixel
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of view-bank
                                            (memory-entry view-page
                                                          written-cell))
                                   #b11
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (memory-pattern (tile-of view-bank
                                            (memory-entry view-page
                                                          written-cell))
                                   #b10
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (memory-pattern (tile-of view-bank
                                            (memory-entry view-page
                                                          written-cell))
                                   #b01
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!4 (bvlshr (memory-pattern (tile-of view-bank
                                            (memory-entry view-page
                                                          written-cell))
                                   #b00
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!6 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of view-bank written-entry)
                                     #b11
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!7 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of view-bank written-entry)
                                     #b10
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!8 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of view-bank written-entry)
                                     #b01
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!9 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of view-bank written-entry)
                                     #b00
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!5 (concat (concat (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2))
                           ((_ extract 0 0) a!3))
                   ((_ extract 0 0) a!4)))
      (a!10 (view-colour (concat (concat (concat a!6 a!7) a!8) a!9))))
  (or (distinct view-page written-page)
      (distinct pixel-cell written-cell)
      (= (view-colour a!5) a!10)))))
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
      (a!6 (tile-of view-bank
                    (ite (and (= written-page view-page)
                              (= written-cell pixel-cell))
                         written-entry
                         (memory-entry view-page pixel-cell)))))
(let ((a!5 (concat (concat (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2))
                           ((_ extract 0 0) a!3))
                   ((_ extract 0 0) a!4)))
      (a!7 ((_ extract 0 0)
             (bvlshr (memory-pattern a!6 #b11 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!8 ((_ extract 0 0)
             (bvlshr (memory-pattern a!6 #b10 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!9 ((_ extract 0 0)
             (bvlshr (memory-pattern a!6 #b01 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!10 ((_ extract 0 0)
              (bvlshr (memory-pattern a!6 #b00 pixel-row)
                      ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!11 (view-colour (concat (concat (concat a!7 a!8) a!9) a!10))))
  (not (= (view-colour a!5) a!11))))))
(check-sat)
