; Theorem 4, pattern-cut-rule-3-planes: If a blanking cut just before or just after a pattern write
; shows the old frame under the old view (until the view has changed) and the new frame under the new
; one (from its first change on), then the write keeps hidden-writes. With the step, this is the cut
; rule both ways.
; Size: 512 tiles of 3 planes, 1,024 cells, 2 pages, 2 banks. Wanted: proved.
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
(declare-fun new-view-colour ((_ BitVec 3)) (_ BitVec 8))
(declare-fun new-view-page () (_ BitVec 1))
(declare-fun old-frame ((_ BitVec 10) (_ BitVec 3) (_ BitVec 3)) (_ BitVec 8))
(declare-fun old-view-bank () (_ BitVec 1))
(declare-fun old-view-colour ((_ BitVec 3)) (_ BitVec 8))
(declare-fun old-view-page () (_ BitVec 1))
(declare-fun pixel-cell () (_ BitVec 10))
(declare-fun pixel-column () (_ BitVec 3))
(declare-fun pixel-row () (_ BitVec 3))
(declare-fun tile-of ((_ BitVec 1) (_ BitVec 9)) (_ BitVec 9))
(declare-fun written-byte () (_ BitVec 8))
(declare-fun written-plane () (_ BitVec 2))
(declare-fun written-row () (_ BitVec 3))
(declare-fun written-tile () (_ BitVec 9))
; cut before the write, the old view shows the old frame
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          pixel-cell))
                                   #b10
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          pixel-cell))
                                   #b01
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          pixel-cell))
                                   #b00
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!4 (old-view-colour (concat (concat ((_ extract 0 0) a!1)
                                            ((_ extract 0 0) a!2))
                                    ((_ extract 0 0) a!3)))))
  (=> judged-under-old (= a!4 (old-frame pixel-cell pixel-row pixel-column))))))
; cut after the write, the old view shows the old frame
(assert (let ((a!1 (and (= written-tile
                   (tile-of old-view-bank
                            (memory-entry old-view-page pixel-cell)))
                (= written-plane #b10)
                (= written-row pixel-row)))
      (a!4 (and (= written-tile
                   (tile-of old-view-bank
                            (memory-entry old-view-page pixel-cell)))
                (= written-plane #b01)
                (= written-row pixel-row)))
      (a!7 (and (= written-tile
                   (tile-of old-view-bank
                            (memory-entry old-view-page pixel-cell)))
                (= written-plane #b00)
                (= written-row pixel-row))))
(let ((a!2 (ite a!1
                written-byte
                (memory-pattern (tile-of old-view-bank
                                         (memory-entry old-view-page pixel-cell))
                                #b10
                                pixel-row)))
      (a!5 (ite a!4
                written-byte
                (memory-pattern (tile-of old-view-bank
                                         (memory-entry old-view-page pixel-cell))
                                #b01
                                pixel-row)))
      (a!8 (ite a!7
                written-byte
                (memory-pattern (tile-of old-view-bank
                                         (memory-entry old-view-page pixel-cell))
                                #b00
                                pixel-row))))
(let ((a!3 ((_ extract 0 0)
             (bvlshr a!2 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!6 ((_ extract 0 0)
             (bvlshr a!5 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!9 ((_ extract 0 0)
             (bvlshr a!8 ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!10 (= (old-view-colour (concat (concat a!3 a!6) a!9))
               (old-frame pixel-cell pixel-row pixel-column))))
  (=> judged-under-old a!10))))))
; cut before the write, the new view shows the new frame
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of new-view-bank
                                            (memory-entry new-view-page
                                                          pixel-cell))
                                   #b10
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (memory-pattern (tile-of new-view-bank
                                            (memory-entry new-view-page
                                                          pixel-cell))
                                   #b01
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (memory-pattern (tile-of new-view-bank
                                            (memory-entry new-view-page
                                                          pixel-cell))
                                   #b00
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!4 (new-view-colour (concat (concat ((_ extract 0 0) a!1)
                                            ((_ extract 0 0) a!2))
                                    ((_ extract 0 0) a!3)))))
  (=> judged-under-new (= a!4 (new-frame pixel-cell pixel-row pixel-column))))))
; cut after the write, the new view shows the new frame
(assert (let ((a!1 (and (= written-tile
                   (tile-of new-view-bank
                            (memory-entry new-view-page pixel-cell)))
                (= written-plane #b10)
                (= written-row pixel-row)))
      (a!4 (and (= written-tile
                   (tile-of new-view-bank
                            (memory-entry new-view-page pixel-cell)))
                (= written-plane #b01)
                (= written-row pixel-row)))
      (a!7 (and (= written-tile
                   (tile-of new-view-bank
                            (memory-entry new-view-page pixel-cell)))
                (= written-plane #b00)
                (= written-row pixel-row))))
(let ((a!2 (ite a!1
                written-byte
                (memory-pattern (tile-of new-view-bank
                                         (memory-entry new-view-page pixel-cell))
                                #b10
                                pixel-row)))
      (a!5 (ite a!4
                written-byte
                (memory-pattern (tile-of new-view-bank
                                         (memory-entry new-view-page pixel-cell))
                                #b01
                                pixel-row)))
      (a!8 (ite a!7
                written-byte
                (memory-pattern (tile-of new-view-bank
                                         (memory-entry new-view-page pixel-cell))
                                #b00
                                pixel-row))))
(let ((a!3 ((_ extract 0 0)
             (bvlshr a!2 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!6 ((_ extract 0 0)
             (bvlshr a!5 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!9 ((_ extract 0 0)
             (bvlshr a!8 ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!10 (= (new-view-colour (concat (concat a!3 a!6) a!9))
               (new-frame pixel-cell pixel-row pixel-column))))
  (=> judged-under-new a!10))))))
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
      (a!8 (old-view-colour (concat (concat ((_ extract 0 0) a!4)
                                            ((_ extract 0 0) a!5))
                                    ((_ extract 0 0) a!6))))
      (a!11 (new-view-colour (concat (concat ((_ extract 0 0) a!4)
                                             ((_ extract 0 0) a!5))
                                     ((_ extract 0 0) a!6)))))
(let ((a!9 (= (old-view-colour (concat (concat a!1 a!2) a!3)) a!8))
      (a!12 (= (new-view-colour (concat (concat a!1 a!2) a!3)) a!11)))
(let ((a!10 (or (distinct (tile-of old-view-bank
                                   (memory-entry old-view-page pixel-cell))
                          written-tile)
                (distinct written-row pixel-row)
                a!7
                a!9))
      (a!13 (or (distinct (tile-of new-view-bank
                                   (memory-entry new-view-page pixel-cell))
                          written-tile)
                (distinct written-row pixel-row)
                a!7
                a!12)))
  (not (and (=> judged-under-old a!10) (=> judged-under-new a!13))))))))
(check-sat)
