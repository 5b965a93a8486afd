;; Finds JSON strings that may be wanted. SIMD finds the quotes that begin a string; two bytes, then four, settle most of
;; them, what is left is checked exactly. Memory: 0 fold table (256), 256 is it a letter or digit (256), 1024 beginnings, 8192 beginnings that suffice,
;; 16384 whole strings (bit tables of src/replay/string-table.ts), 32768 a bit for each pair of first bytes that may be
;; wanted, 40960 a bit for each hash of four first letters or digits that may be wanted.
(module
  (memory (export "memory") 1)

  (func $bit (param $table i32) (param $bit i32) (result i32)
    (i32.and
      (i32.shr_u
        (i32.load8_u (i32.add (local.get $table) (i32.shr_u (local.get $bit) (i32.const 3))))
        (i32.and (local.get $bit) (i32.const 7)))
      (i32.const 1)))

  ;; mayBeWanted of src/replay/line-filter.ts: $p is the byte after the quote
  (func $wanted (param $p i32) (param $end i32) (result i32)
    (local $last i32) (local $hash i32) (local $beg i32) (local $letters i32) (local $b i32)
    (local.set $hash (i32.const 0x811c9dc5))
    (local.set $last (i32.add (local.get $p) (i32.const 96)))
    (if (i32.lt_u (local.get $end) (local.get $last)) (then (local.set $last (local.get $end))))
    (loop $L
      (if (i32.ge_u (local.get $p) (local.get $last))
        (then (return (i32.lt_u (local.get $letters) (i32.const 3)))))
      (local.set $b (i32.load8_u (local.get $p)))
      (if (i32.eq (local.get $b) (i32.const 34)) (then
        (if (i32.eqz (local.get $letters)) (then (return (i32.const 0))))
        (block $filled (loop $F
          (br_if $filled (i32.ge_u (local.get $letters) (i32.const 3)))
          (local.set $beg (i32.mul (local.get $beg) (i32.const 37)))
          (local.set $letters (i32.add (local.get $letters) (i32.const 1)))
          (br $F)))
        (return (i32.and
          (call $bit (i32.const 1024) (local.get $beg))
          (call $bit (i32.const 16384)
            (i32.and
              (i32.xor (i32.shr_u (local.get $hash) (i32.const 16)) (local.get $hash))
              (i32.const 65535)))))))
      (if (i32.eq (local.get $b) (i32.const 92)) (then
        (if (i32.eq (i32.load8_u offset=1 (local.get $p)) (i32.const 117)) (then (return (i32.const 1))))
        (local.set $p (i32.add (local.get $p) (i32.const 2)))
        (br $L)))
      (local.set $p (i32.add (local.get $p) (i32.const 1)))
      (local.set $b (i32.load8_u (local.get $b)))
      (br_if $L (i32.eqz (local.get $b)))
      (local.set $hash (i32.mul (i32.xor (local.get $hash) (local.get $b)) (i32.const 0x01000193)))
      (local.set $letters (i32.add (local.get $letters) (i32.const 1)))
      (br_if $L (i32.gt_u (local.get $letters) (i32.const 3)))
      (local.set $beg (i32.add (i32.mul (local.get $beg) (i32.const 37)) (local.get $b)))
      (br_if $L (i32.lt_u (local.get $letters) (i32.const 3)))
      (if (call $bit (i32.const 8192) (local.get $beg)) (then (return (i32.const 1))))
      (br_if $L (call $bit (i32.const 1024) (local.get $beg))))
    (i32.const 0))

  ;; Positions of quotes go to $out; returns their number, or -1 when they do not fit before $outEnd. 64 bytes at a time,
  ;; and one decision a quote: what a processor cannot foresee costs more than what it computes.
  (func (export "scan") (param $p i32) (param $end i32) (param $out i32) (param $outEnd i32) (result i32)
    (local $o i32) (local $mask i64) (local $h i32) (local $four i32) (local $hash i32) (local $base i32) (local $a v128)
    (local $quote v128) (local $colon v128) (local $comma v128) (local $brace v128) (local $bracket v128)
    (local.set $quote (v128.const i8x16 34 34 34 34 34 34 34 34 34 34 34 34 34 34 34 34))
    (local.set $colon (v128.const i8x16 58 58 58 58 58 58 58 58 58 58 58 58 58 58 58 58))
    (local.set $comma (v128.const i8x16 44 44 44 44 44 44 44 44 44 44 44 44 44 44 44 44))
    (local.set $brace (v128.const i8x16 125 125 125 125 125 125 125 125 125 125 125 125 125 125 125 125))
    (local.set $bracket (v128.const i8x16 93 93 93 93 93 93 93 93 93 93 93 93 93 93 93 93))
    (local.set $o (local.get $out))
    (local.set $base (local.get $p))
    (block $done (loop $L
      (br_if $done (i32.ge_u (local.get $p) (local.get $end)))
      ;; a quote that ends a string is followed by one of : , } ]
      (local.set $mask (i64.or
        (i64.or
          (i64.extend_i32_u (i8x16.bitmask (v128.andnot
          (i8x16.eq (v128.load (local.get $p)) (local.get $quote))
          (v128.or
            (v128.or (i8x16.eq (local.tee $a (v128.load offset=1 (local.get $p))) (local.get $colon)) (i8x16.eq (local.get $a) (local.get $comma)))
            (v128.or (i8x16.eq (local.get $a) (local.get $brace)) (i8x16.eq (local.get $a) (local.get $bracket)))))))
          (i64.shl (i64.extend_i32_u (i8x16.bitmask (v128.andnot
          (i8x16.eq (v128.load offset=16 (local.get $p)) (local.get $quote))
          (v128.or
            (v128.or (i8x16.eq (local.tee $a (v128.load offset=17 (local.get $p))) (local.get $colon)) (i8x16.eq (local.get $a) (local.get $comma)))
            (v128.or (i8x16.eq (local.get $a) (local.get $brace)) (i8x16.eq (local.get $a) (local.get $bracket))))))) (i64.const 16)))
        (i64.or
          (i64.shl (i64.extend_i32_u (i8x16.bitmask (v128.andnot
          (i8x16.eq (v128.load offset=32 (local.get $p)) (local.get $quote))
          (v128.or
            (v128.or (i8x16.eq (local.tee $a (v128.load offset=33 (local.get $p))) (local.get $colon)) (i8x16.eq (local.get $a) (local.get $comma)))
            (v128.or (i8x16.eq (local.get $a) (local.get $brace)) (i8x16.eq (local.get $a) (local.get $bracket))))))) (i64.const 32))
          (i64.shl (i64.extend_i32_u (i8x16.bitmask (v128.andnot
          (i8x16.eq (v128.load offset=48 (local.get $p)) (local.get $quote))
          (v128.or
            (v128.or (i8x16.eq (local.tee $a (v128.load offset=49 (local.get $p))) (local.get $colon)) (i8x16.eq (local.get $a) (local.get $comma)))
            (v128.or (i8x16.eq (local.get $a) (local.get $brace)) (i8x16.eq (local.get $a) (local.get $bracket))))))) (i64.const 48)))))
      (block $none (loop $B
        (br_if $none (i64.eqz (local.get $mask)))
        (local.set $h (i32.add (local.get $p) (i32.wrap_i64 (i64.ctz (local.get $mask)))))
        (local.set $mask (i64.and (local.get $mask) (i64.sub (local.get $mask) (i64.const 1))))
        (local.set $four (i32.load offset=1 (local.get $h)))
        ;; four letters or digits (those in lower case), or the first two bytes, with which no wanted string begins
        (local.set $hash (i32.shr_u
          (i32.mul (i32.or (local.get $four) (i32.const 0x20202020)) (i32.const 0x9e3779b1)) (i32.const 16)))
        (br_if $B (i32.eqz (i32.and (i32.const 1) (i32.and
          (i32.shr_u
            (i32.load8_u offset=32768 (i32.shr_u (i32.and (local.get $four) (i32.const 65535)) (i32.const 3)))
            (i32.and (local.get $four) (i32.const 7)))
          (i32.or
            (i32.shr_u
              (i32.load8_u offset=40960 (i32.shr_u (local.get $hash) (i32.const 3)))
              (i32.and (local.get $hash) (i32.const 7)))
            (i32.xor (i32.const 1) (i32.and
              (i32.and
                (i32.load8_u offset=256 (i32.and (local.get $four) (i32.const 255)))
                (i32.load8_u offset=256 (i32.and (i32.shr_u (local.get $four) (i32.const 8)) (i32.const 255))))
              (i32.and
                (i32.load8_u offset=256 (i32.and (i32.shr_u (local.get $four) (i32.const 16)) (i32.const 255)))
                (i32.load8_u offset=256 (i32.shr_u (local.get $four) (i32.const 24)))))))))))
        (br_if $none (i32.ge_u (local.get $h) (local.get $end)))
        (br_if $B (i32.eqz (call $wanted (i32.add (local.get $h) (i32.const 1)) (local.get $end))))
        (if (i32.ge_u (local.get $o) (local.get $outEnd)) (then (return (i32.const -1))))
        (i32.store (local.get $o) (i32.sub (local.get $h) (local.get $base)))
        (local.set $o (i32.add (local.get $o) (i32.const 4)))
        (br $B)))
      (local.set $p (i32.add (local.get $p) (i32.const 64)))
      (br $L)))
    (i32.shr_u (i32.sub (local.get $o) (local.get $out)) (i32.const 2))))
