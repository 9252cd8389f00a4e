; Theorem 4, map-cut-rule-4-planes: If a blanking cut just before or just after a map write shows the
; old frame under the old view (until the view has changed) and the new frame under the new one (from
; its first change on), then the write keeps hidden-writes. With the step, this is the cut rule both
; ways.
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
(declare-fun written-cell () (_ BitVec 10))
(declare-fun written-entry () (_ BitVec 9))
(declare-fun written-page () (_ BitVec 1))
; cut before the write, the old view shows the old frame
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
; cut after the write, the old view shows the old frame
(assert (let ((a!1 (tile-of old-view-bank
                    (ite (and (= written-page old-view-page)
                              (= written-cell pixel-cell))
                         written-entry
                         (memory-entry old-view-page pixel-cell)))))
(let ((a!2 ((_ extract 0 0)
             (bvlshr (memory-pattern a!1 #b11 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!3 ((_ extract 0 0)
             (bvlshr (memory-pattern a!1 #b10 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!4 ((_ extract 0 0)
             (bvlshr (memory-pattern a!1 #b01 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!5 ((_ extract 0 0)
             (bvlshr (memory-pattern a!1 #b00 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!6 (old-view-colour (concat (concat (concat a!2 a!3) a!4) a!5))))
  (=> judged-under-old (= a!6 (old-frame pixel-cell pixel-row pixel-column)))))))
; cut before the write, the new view shows the new frame
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
; cut after the write, the new view shows the new frame
(assert (let ((a!1 (tile-of new-view-bank
                    (ite (and (= written-page new-view-page)
                              (= written-cell pixel-cell))
                         written-entry
                         (memory-entry new-view-page pixel-cell)))))
(let ((a!2 ((_ extract 0 0)
             (bvlshr (memory-pattern a!1 #b11 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!3 ((_ extract 0 0)
             (bvlshr (memory-pattern a!1 #b10 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!4 ((_ extract 0 0)
             (bvlshr (memory-pattern a!1 #b01 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!5 ((_ extract 0 0)
             (bvlshr (memory-pattern a!1 #b00 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!6 (new-view-colour (concat (concat (concat a!2 a!3) a!4) a!5))))
  (=> judged-under-new (= a!6 (new-frame pixel-cell pixel-row pixel-column)))))))
; not the goal
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          written-cell))
                                   #b11
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          written-cell))
                                   #b10
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          written-cell))
                                   #b01
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!4 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          written-cell))
                                   #b00
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!6 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of old-view-bank written-entry)
                                     #b11
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!7 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of old-view-bank written-entry)
                                     #b10
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!8 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of old-view-bank written-entry)
                                     #b01
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!9 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of old-view-bank written-entry)
                                     #b00
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!12 (bvlshr (memory-pattern (tile-of new-view-bank
                                             (memory-entry new-view-page
                                                           written-cell))
                                    #b11
                                    pixel-row)
                    ((_ zero_extend 5) (bvnot pixel-column))))
      (a!13 (bvlshr (memory-pattern (tile-of new-view-bank
                                             (memory-entry new-view-page
                                                           written-cell))
                                    #b10
                                    pixel-row)
                    ((_ zero_extend 5) (bvnot pixel-column))))
      (a!14 (bvlshr (memory-pattern (tile-of new-view-bank
                                             (memory-entry new-view-page
                                                           written-cell))
                                    #b01
                                    pixel-row)
                    ((_ zero_extend 5) (bvnot pixel-column))))
      (a!15 (bvlshr (memory-pattern (tile-of new-view-bank
                                             (memory-entry new-view-page
                                                           written-cell))
                                    #b00
                                    pixel-row)
                    ((_ zero_extend 5) (bvnot pixel-column))))
      (a!17 ((_ extract 0 0)
              (bvlshr (memory-pattern (tile-of new-view-bank written-entry)
                                      #b11
                                      pixel-row)
                      ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!18 ((_ extract 0 0)
              (bvlshr (memory-pattern (tile-of new-view-bank written-entry)
                                      #b10
                                      pixel-row)
                      ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!19 ((_ extract 0 0)
              (bvlshr (memory-pattern (tile-of new-view-bank written-entry)
                                      #b01
                                      pixel-row)
                      ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!20 ((_ extract 0 0)
              (bvlshr (memory-pattern (tile-of new-view-bank written-entry)
                                      #b00
                                      pixel-row)
                      ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!5 (concat (concat (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2))
                           ((_ extract 0 0) a!3))
                   ((_ extract 0 0) a!4)))
      (a!10 (old-view-colour (concat (concat (concat a!6 a!7) a!8) a!9)))
      (a!16 (concat (concat (concat ((_ extract 0 0) a!12)
                                    ((_ extract 0 0) a!13))
                            ((_ extract 0 0) a!14))
                    ((_ extract 0 0) a!15)))
      (a!21 (new-view-colour (concat (concat (concat a!17 a!18) a!19) a!20))))
(let ((a!11 (=> judged-under-old
                (or (distinct old-view-page written-page)
                    (distinct pixel-cell written-cell)
                    (= (old-view-colour a!5) a!10))))
      (a!22 (=> judged-under-new
                (or (distinct new-view-page written-page)
                    (distinct pixel-cell written-cell)
                    (= (new-view-colour a!16) a!21)))))
  (not (and a!11 a!22))))))
(check-sat)
