; Theorem 4, three-writes-pattern-map-pattern: A pattern write before, a map write within and a
; pattern write after the view change, each within the rules, leave the current picture standing until
; the change and the revealed one from then on.
; Size: 512 tiles of 2 planes, 1,024 cells, 2 pages, 2 banks. Wanted: proved.
(set-info :status unsat)
(set-logic QF_UFBV)
(declare-fun current ((_ BitVec 10) (_ BitVec 3) (_ BitVec 3)) (_ BitVec 8))
(declare-fun first-byte () (_ BitVec 8))
(declare-fun first-plane () (_ BitVec 1))
(declare-fun first-row () (_ BitVec 3))
(declare-fun first-tile () (_ BitVec 9))
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
(declare-fun second-cell () (_ BitVec 10))
(declare-fun second-entry () (_ BitVec 9))
(declare-fun second-page () (_ BitVec 1))
(declare-fun third-byte () (_ BitVec 8))
(declare-fun third-plane () (_ BitVec 1))
(declare-fun third-row () (_ BitVec 3))
(declare-fun third-tile () (_ BitVec 9))
(declare-fun tile-of ((_ BitVec 1) (_ BitVec 9)) (_ BitVec 9))
; the first write is hidden under the old view
(assert (let ((a!1 ((_ extract 0 0)
             (bvlshr (memory-pattern first-tile #b1 first-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!2 ((_ extract 0 0)
             (bvlshr (memory-pattern first-tile #b0 first-row)
                     ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!3 (bvlshr (ite (and (= first-tile first-tile)
                             (= first-plane #b1)
                             (= first-row first-row))
                        first-byte
                        (memory-pattern first-tile #b1 first-row))
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!4 (bvlshr (ite (and (= first-tile first-tile)
                             (= first-plane #b0)
                             (= first-row first-row))
                        first-byte
                        (memory-pattern first-tile #b0 first-row))
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!5 (= (old-view-colour (concat a!1 a!2))
              (old-view-colour (concat ((_ extract 0 0) a!3)
                                       ((_ extract 0 0) a!4))))))
  (or (distinct (tile-of old-view-bank (memory-entry old-view-page pixel-cell))
                first-tile)
      (distinct first-row pixel-row)
      (= (concat a!1 a!2) (concat ((_ extract 0 0) a!3) ((_ extract 0 0) a!4)))
      a!5))))
; the second write is hidden under the old view
(assert (let ((a!1 (and (= first-tile
                   (tile-of old-view-bank
                            (memory-entry old-view-page second-cell)))
                (= first-plane #b1)
                (= first-row pixel-row)))
      (a!4 (and (= first-tile
                   (tile-of old-view-bank
                            (memory-entry old-view-page second-cell)))
                (= first-plane #b0)
                (= first-row pixel-row)))
      (a!7 (ite (and (= first-tile (tile-of old-view-bank second-entry))
                     (= first-plane #b1)
                     (= first-row pixel-row))
                first-byte
                (memory-pattern (tile-of old-view-bank second-entry)
                                #b1
                                pixel-row)))
      (a!9 (ite (and (= first-tile (tile-of old-view-bank second-entry))
                     (= first-plane #b0)
                     (= first-row pixel-row))
                first-byte
                (memory-pattern (tile-of old-view-bank second-entry)
                                #b0
                                pixel-row))))
(let ((a!2 (ite a!1
                first-byte
                (memory-pattern (tile-of old-view-bank
                                         (memory-entry old-view-page
                                                       second-cell))
                                #b1
                                pixel-row)))
      (a!5 (ite a!4
                first-byte
                (memory-pattern (tile-of old-view-bank
                                         (memory-entry old-view-page
                                                       second-cell))
                                #b0
                                pixel-row)))
      (a!8 ((_ extract 0 0)
             (bvlshr a!7 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!10 ((_ extract 0 0)
              (bvlshr a!9 ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!3 ((_ extract 0 0)
             (bvlshr a!2 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!6 ((_ extract 0 0)
             (bvlshr a!5 ((_ zero_extend 5) (bvnot pixel-column))))))
  (or (distinct old-view-page second-page)
      (distinct pixel-cell second-cell)
      (= (old-view-colour (concat a!3 a!6)) (old-view-colour (concat a!8 a!10))))))))
; the second write is hidden under the new view
(assert (let ((a!1 (and (= first-tile
                   (tile-of new-view-bank
                            (memory-entry new-view-page second-cell)))
                (= first-plane #b1)
                (= first-row pixel-row)))
      (a!4 (and (= first-tile
                   (tile-of new-view-bank
                            (memory-entry new-view-page second-cell)))
                (= first-plane #b0)
                (= first-row pixel-row)))
      (a!7 (ite (and (= first-tile (tile-of new-view-bank second-entry))
                     (= first-plane #b1)
                     (= first-row pixel-row))
                first-byte
                (memory-pattern (tile-of new-view-bank second-entry)
                                #b1
                                pixel-row)))
      (a!9 (ite (and (= first-tile (tile-of new-view-bank second-entry))
                     (= first-plane #b0)
                     (= first-row pixel-row))
                first-byte
                (memory-pattern (tile-of new-view-bank second-entry)
                                #b0
                                pixel-row))))
(let ((a!2 (ite a!1
                first-byte
                (memory-pattern (tile-of new-view-bank
                                         (memory-entry new-view-page
                                                       second-cell))
                                #b1
                                pixel-row)))
      (a!5 (ite a!4
                first-byte
                (memory-pattern (tile-of new-view-bank
                                         (memory-entry new-view-page
                                                       second-cell))
                                #b0
                                pixel-row)))
      (a!8 ((_ extract 0 0)
             (bvlshr a!7 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!10 ((_ extract 0 0)
              (bvlshr a!9 ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!3 ((_ extract 0 0)
             (bvlshr a!2 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!6 ((_ extract 0 0)
             (bvlshr a!5 ((_ zero_extend 5) (bvnot pixel-column))))))
  (or (distinct new-view-page second-page)
      (distinct pixel-cell second-cell)
      (= (new-view-colour (concat a!3 a!6)) (new-view-colour (concat a!8 a!10))))))))
; the third write is hidden under the new view
(assert (let ((a!1 (tile-of new-view-bank
                    (ite (and (= second-page new-view-page)
                              (= second-cell pixel-cell))
                         second-entry
                         (memory-entry new-view-page pixel-cell))))
      (a!2 (ite (and (= first-tile third-tile)
                     (= first-plane #b1)
                     (= first-row third-row))
                first-byte
                (memory-pattern third-tile #b1 third-row)))
      (a!4 (ite (and (= first-tile third-tile)
                     (= first-plane #b0)
                     (= first-row third-row))
                first-byte
                (memory-pattern third-tile #b0 third-row))))
(let ((a!3 ((_ extract 0 0)
             (bvlshr a!2 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!5 ((_ extract 0 0)
             (bvlshr a!4 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!6 (bvlshr (ite (and (= third-tile third-tile)
                             (= third-plane #b1)
                             (= third-row third-row))
                        third-byte
                        a!2)
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!7 (bvlshr (ite (and (= third-tile third-tile)
                             (= third-plane #b0)
                             (= third-row third-row))
                        third-byte
                        a!4)
                   ((_ zero_extend 5) (bvnot pixel-column)))))
(let ((a!8 (= (new-view-colour (concat a!3 a!5))
              (new-view-colour (concat ((_ extract 0 0) a!6)
                                       ((_ extract 0 0) a!7))))))
  (or (distinct a!1 third-tile)
      (distinct third-row pixel-row)
      (= (concat a!3 a!5) (concat ((_ extract 0 0) a!6) ((_ extract 0 0) a!7)))
      a!8)))))
; exact-reveal
(assert (let ((a!1 (tile-of new-view-bank
                    (ite (and (= second-page new-view-page)
                              (= second-cell pixel-cell))
                         second-entry
                         (memory-entry new-view-page pixel-cell)))))
(let ((a!2 (bvlshr (ite (and (= first-tile a!1)
                             (= first-plane #b1)
                             (= first-row pixel-row))
                        first-byte
                        (memory-pattern a!1 #b1 pixel-row))
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!3 (bvlshr (ite (and (= first-tile a!1)
                             (= first-plane #b0)
                             (= first-row pixel-row))
                        first-byte
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
(assert (let ((a!1 (and (= first-tile
                   (tile-of old-view-bank
                            (memory-entry old-view-page pixel-cell)))
                (= first-plane #b1)
                (= first-row pixel-row)))
      (a!4 (and (= first-tile
                   (tile-of old-view-bank
                            (memory-entry old-view-page pixel-cell)))
                (= first-plane #b0)
                (= first-row pixel-row)))
      (a!7 (tile-of old-view-bank
                    (ite (and (= second-page old-view-page)
                              (= second-cell pixel-cell))
                         second-entry
                         (memory-entry old-view-page pixel-cell))))
      (a!11 (and (= first-tile
                    (tile-of new-view-bank
                             (memory-entry new-view-page pixel-cell)))
                 (= first-plane #b1)
                 (= first-row pixel-row)))
      (a!14 (and (= first-tile
                    (tile-of new-view-bank
                             (memory-entry new-view-page pixel-cell)))
                 (= first-plane #b0)
                 (= first-row pixel-row)))
      (a!17 (tile-of new-view-bank
                     (ite (and (= second-page new-view-page)
                               (= second-cell pixel-cell))
                          second-entry
                          (memory-entry new-view-page pixel-cell)))))
(let ((a!2 (ite a!1
                first-byte
                (memory-pattern (tile-of old-view-bank
                                         (memory-entry old-view-page pixel-cell))
                                #b1
                                pixel-row)))
      (a!5 (ite a!4
                first-byte
                (memory-pattern (tile-of old-view-bank
                                         (memory-entry old-view-page pixel-cell))
                                #b0
                                pixel-row)))
      (a!8 (bvlshr (ite (and (= first-tile a!7)
                             (= first-plane #b1)
                             (= first-row pixel-row))
                        first-byte
                        (memory-pattern a!7 #b1 pixel-row))
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!9 (bvlshr (ite (and (= first-tile a!7)
                             (= first-plane #b0)
                             (= first-row pixel-row))
                        first-byte
                        (memory-pattern a!7 #b0 pixel-row))
                   ((_ zero_extend 5) (bvnot pixel-column))))
      (a!12 (ite a!11
                 first-byte
                 (memory-pattern (tile-of new-view-bank
                                          (memory-entry new-view-page
                                                        pixel-cell))
                                 #b1
                                 pixel-row)))
      (a!15 (ite a!14
                 first-byte
                 (memory-pattern (tile-of new-view-bank
                                          (memory-entry new-view-page
                                                        pixel-cell))
                                 #b0
                                 pixel-row)))
      (a!18 (ite (and (= third-tile a!17)
                      (= third-plane #b1)
                      (= third-row pixel-row))
                 third-byte
                 (ite (and (= first-tile a!17)
                           (= first-plane #b1)
                           (= first-row pixel-row))
                      first-byte
                      (memory-pattern a!17 #b1 pixel-row))))
      (a!20 (ite (and (= third-tile a!17)
                      (= third-plane #b0)
                      (= third-row pixel-row))
                 third-byte
                 (ite (and (= first-tile a!17)
                           (= first-plane #b0)
                           (= first-row pixel-row))
                      first-byte
                      (memory-pattern a!17 #b0 pixel-row)))))
(let ((a!3 ((_ extract 0 0)
             (bvlshr a!2 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!6 ((_ extract 0 0)
             (bvlshr a!5 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!10 (= (old-view-colour (concat ((_ extract 0 0) a!8)
                                        ((_ extract 0 0) a!9)))
               (current pixel-cell pixel-row pixel-column)))
      (a!13 ((_ extract 0 0)
              (bvlshr a!12 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!16 ((_ extract 0 0)
              (bvlshr a!15 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!19 ((_ extract 0 0)
              (bvlshr a!18 ((_ zero_extend 5) (bvnot pixel-column)))))
      (a!21 ((_ extract 0 0)
              (bvlshr a!20 ((_ zero_extend 5) (bvnot pixel-column))))))
(let ((a!22 (and (= (old-view-colour (concat a!3 a!6))
                    (current pixel-cell pixel-row pixel-column))
                 a!10
                 (= (new-view-colour (concat a!13 a!16))
                    (new-view-colour (concat a!19 a!21)))
                 (= (new-view-colour (concat a!19 a!21))
                    (ite is-next
                         (next pixel-cell pixel-row pixel-column)
                         (current pixel-cell pixel-row pixel-column))))))
  (not a!22))))))
(check-sat)
