; Theorem 4, three-writes-map-pattern-map: A map write before, a pattern write within and a map write
; after the view change, each within the rules, leave the current picture standing until the change
; and the revealed one from then on.
; Size: 512 tiles of 2 planes, 1,024 cells, 2 pages, 2 banks. Wanted: proved.
(set-info :status unsat)
(set-logic QF_UFBV)
(declare-fun current ((_ BitVec 10) (_ BitVec 3) (_ BitVec 3)) (_ BitVec 8))
(declare-fun first-cell () (_ BitVec 10))
(declare-fun first-entry () (_ BitVec 9))
(declare-fun first-page () (_ BitVec 1))
(declare-fun is-next () Bool)
(declare-fun memory-entry ((_ BitVec 1) (_ BitVec 10)) (_ BitVec 9))
(declare-fun memory-pattern
             ((_ BitVec 9) (_ BitVec 1) (_ BitVec 3))
             (_ BitVec 8))
(declare-fun new-view-bank () (_ BitVec 1))
(declare-fun new-view-colour ((_ BitVec 2)) (_ BitVec 8))
(declare-fun new-view-page () (_ BitVec 1))
(declare-fun next ((_ BitVec 10) (_ BitVec 3) (_ BitVec 3)) (_ BitVec 8))
(declare-fun old-view-bank () (_ BitVec 1))
(declare-fun old-view-colour ((_ BitVec 2)) (_ BitVec 8))
(declare-fun old-view-page () (_ BitVec 1))
(declare-fun pixel-cell () (_ BitVec 10))
(declare-fun pixel-column () (_ BitVec 3))
(declare-fun pixel-row () (_ BitVec 3))
(declare-fun second-byte () (_ BitVec 8))
(declare-fun second-plane () (_ BitVec 1))
(declare-fun second-row () (_ BitVec 3))
(declare-fun second-tile () (_ BitVec 9))
(declare-fun third-cell () (_ BitVec 10))
(declare-fun third-entry () (_ BitVec 9))
(declare-fun third-page () (_ BitVec 1))
(declare-fun tile-of ((_ BitVec 1) (_ BitVec 9)) (_ BitVec 9))
; the first write is hidden under the old view
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          first-cell))
                                   #b1
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          first-cell))
                                   #b0
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of old-view-bank first-entry)
                                     #b1
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!4 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of old-view-bank first-entry)
                                     #b0
                                     pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!5 (= (old-view-colour (concat ((_ extract 0 0) a!1)
                                       ((_ extract 0 0) a!2)))
              (old-view-colour (concat a!3 a!4)))))
  (or (distinct old-view-page first-page) (distinct pixel-cell first-cell) a!5))))
; the second write is hidden under the old view
(assert (let ((a!1 (tile-of old-view-bank
                    (ite (and (= first-page old-view-page)
                              (= first-cell pixel-cell))
                         first-entry
                         (memory-entry old-view-page pixel-cell))))
      (a!2 ((_ extract 0 0)
             (bvlshr (memory-pattern second-tile #b1 second-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!3 ((_ extract 0 0)
             (bvlshr (memory-pattern second-tile #b0 second-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!4 (bvlshr (ite (and (= second-tile second-tile)
                             (= second-plane #b1)
                             (= second-row second-row))
                        second-byte
                        (memory-pattern second-tile #b1 second-row))
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!5 (bvlshr (ite (and (= second-tile second-tile)
                             (= second-plane #b0)
                             (= second-row second-row))
                        second-byte
                        (memory-pattern second-tile #b0 second-row))
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!6 (= (old-view-colour (concat a!2 a!3))
              (old-view-colour (concat ((_ extract 0 0) a!4)
                                       ((_ extract 0 0) a!5))))))
  (or (distinct a!1 second-tile)
      (distinct second-row pixel-row)
      (= (concat a!2 a!3) (concat ((_ extract 0 0) a!4) ((_ extract 0 0) a!5)))
      a!6))))
; the second write is hidden under the new view
(assert (let ((a!1 (tile-of new-view-bank
                    (ite (and (= first-page new-view-page)
                              (= first-cell pixel-cell))
                         first-entry
                         (memory-entry new-view-page pixel-cell))))
      (a!2 ((_ extract 0 0)
             (bvlshr (memory-pattern second-tile #b1 second-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!3 ((_ extract 0 0)
             (bvlshr (memory-pattern second-tile #b0 second-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!4 (bvlshr (ite (and (= second-tile second-tile)
                             (= second-plane #b1)
                             (= second-row second-row))
                        second-byte
                        (memory-pattern second-tile #b1 second-row))
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!5 (bvlshr (ite (and (= second-tile second-tile)
                             (= second-plane #b0)
                             (= second-row second-row))
                        second-byte
                        (memory-pattern second-tile #b0 second-row))
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!6 (= (new-view-colour (concat a!2 a!3))
              (new-view-colour (concat ((_ extract 0 0) a!4)
                                       ((_ extract 0 0) a!5))))))
  (or (distinct a!1 second-tile)
      (distinct second-row pixel-row)
      (= (concat a!2 a!3) (concat ((_ extract 0 0) a!4) ((_ extract 0 0) a!5)))
      a!6))))
; the third write is hidden under the new view
(assert (let ((a!1 (tile-of new-view-bank
                    (ite (and (= first-page new-view-page)
                              (= first-cell third-cell))
                         first-entry
                         (memory-entry new-view-page third-cell))))
      (a!4 (ite (and (= second-tile (tile-of new-view-bank third-entry))
                     (= second-plane #b1)
                     (= second-row pixel-row))
                second-byte
                (memory-pattern (tile-of new-view-bank third-entry)
                                #b1
                                pixel-row)))
      (a!6 (ite (and (= second-tile (tile-of new-view-bank third-entry))
                     (= second-plane #b0)
                     (= second-row pixel-row))
                second-byte
                (memory-pattern (tile-of new-view-bank third-entry)
                                #b0
                                pixel-row))))
(let ((a!2 (bvlshr (ite (and (= second-tile a!1)
                             (= second-plane #b1)
                             (= second-row pixel-row))
                        second-byte
                        (memory-pattern a!1 #b1 pixel-row))
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (ite (and (= second-tile a!1)
                             (= second-plane #b0)
                             (= second-row pixel-row))
                        second-byte
                        (memory-pattern a!1 #b0 pixel-row))
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!5 ((_ extract 0 0)
             (bvlshr a!4 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!7 ((_ extract 0 0)
             (bvlshr a!6 ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!8 (= (new-view-colour (concat ((_ extract 0 0) a!2)
                                       ((_ extract 0 0) a!3)))
              (new-view-colour (concat a!5 a!7)))))
  (or (distinct new-view-page third-page) (distinct pixel-cell third-cell) a!8)))))
; exact-reveal
(assert (let ((a!1 (tile-of new-view-bank
                    (ite (and (= first-page new-view-page)
                              (= first-cell pixel-cell))
                         first-entry
                         (memory-entry new-view-page pixel-cell)))))
(let ((a!2 (bvlshr (ite (and (= second-tile a!1)
                             (= second-plane #b1)
                             (= second-row pixel-row))
                        second-byte
                        (memory-pattern a!1 #b1 pixel-row))
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (ite (and (= second-tile a!1)
                             (= second-plane #b0)
                             (= second-row pixel-row))
                        second-byte
                        (memory-pattern a!1 #b0 pixel-row))
                   ((_ zero_extend 5) (bvnot pixel-column)))))
  (= (new-view-colour (concat ((_ extract 0 0) a!2) ((_ extract 0 0) a!3)))
     (ite is-next
          (next pixel-cell pixel-row pixel-column)
          (current pixel-cell pixel-row pixel-column))))))
; the current picture was seen
(assert (let ((a!1 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          pixel-cell))
                                   #b1
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!2 (bvlshr (memory-pattern (tile-of old-view-bank
                                            (memory-entry old-view-page
                                                          pixel-cell))
                                   #b0
                                   pixel-row)
                   ((_ zero_extend 5) (bvnot pixel-column)))))
  (= (old-view-colour (concat ((_ extract 0 0) a!1) ((_ extract 0 0) a!2)))
     (current pixel-cell pixel-row pixel-column))))
; not the goal
(assert (let ((a!1 (tile-of old-view-bank
                    (ite (and (= first-page old-view-page)
                              (= first-cell pixel-cell))
                         first-entry
                         (memory-entry old-view-page pixel-cell))))
      (a!7 (ite (and (= first-page new-view-page) (= first-cell pixel-cell))
                first-entry
                (memory-entry new-view-page pixel-cell))))
(let ((a!2 ((_ extract 0 0)
             (bvlshr (memory-pattern a!1 #b1 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!3 ((_ extract 0 0)
             (bvlshr (memory-pattern a!1 #b0 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!4 (bvlshr (ite (and (= second-tile a!1)
                             (= second-plane #b1)
                             (= second-row pixel-row))
                        second-byte
                        (memory-pattern a!1 #b1 pixel-row))
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!5 (bvlshr (ite (and (= second-tile a!1)
                             (= second-plane #b0)
                             (= second-row pixel-row))
                        second-byte
                        (memory-pattern a!1 #b0 pixel-row))
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!8 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of new-view-bank a!7) #b1 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!9 ((_ extract 0 0)
             (bvlshr (memory-pattern (tile-of new-view-bank a!7) #b0 pixel-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!10 (tile-of new-view-bank
                     (ite (and (= third-page new-view-page)
                               (= third-cell pixel-cell))
                          third-entry
                          a!7))))
(let ((a!6 (= (old-view-colour (concat ((_ extract 0 0) a!4)
                                       ((_ extract 0 0) a!5)))
              (current pixel-cell pixel-row pixel-column)))
      (a!11 (bvlshr (ite (and (= second-tile a!10)
                              (= second-plane #b1)
                              (= second-row pixel-row))
                         second-byte
                         (memory-pattern a!10 #b1 pixel-row))
                    ((_ zero_extend 5) (bvnot pixel-column))))
      (a!12 (bvlshr (ite (and (= second-tile a!10)
                              (= second-plane #b0)
                              (= second-row pixel-row))
                         second-byte
                         (memory-pattern a!10 #b0 pixel-row))
                    ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!13 (= (new-view-colour (concat a!8 a!9))
               (new-view-colour (concat ((_ extract 0 0) a!11)
                                        ((_ extract 0 0) a!12)))))
      (a!14 (= (new-view-colour (concat ((_ extract 0 0) a!11)
                                        ((_ extract 0 0) a!12)))
               (ite is-next
                    (next pixel-cell pixel-row pixel-column)
                    (current pixel-cell pixel-row pixel-column)))))
(let ((a!15 (and (= (old-view-colour (concat a!2 a!3))
                    (current pixel-cell pixel-row pixel-column))
                 a!6
                 a!13
                 a!14)))
  (not a!15)))))))
(check-sat)
