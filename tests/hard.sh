#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# bash tests/hard.sh [minutes]: the long versions of all that tries to break the program, and a table of what was tried
# and what broke. The minutes (10, if none are said) are those of each fuzzing program; the rest takes about as long
# again. What is not listed is not looked at. Ends with 0 only if nothing broke.
set -uo pipefail
cd "$(dirname "$0")/.." || exit 1
. src/packages.sh
minutes=${1:-10}
work=build/hard
table=$PWD/$work/table
mkdir -p "$work"
: >"$table"

step 1 5 "packages and the program"
# shellcheck disable=SC2086
install_missing $build_packages $test_packages $hard_packages
configure -DHOLDWATER_TESTS=ON
build holdwater test_bad_input test_files put_set holdwater_failing_disk test_surroundings test_fuzz test_card \
    test_review_truth test_agreement || exit 1

# A line of the table: part, tried, crashes, leaks, wrong exits, slow, harmed, unsafe; -1 is "not looked for here".
row() {
    local IFS='|'
    echo "$*" >>"$table"
}

# A part that its test judges: row_of "part" tried column command... puts 1 into that column if the command fails. Where
# "checks" are tried, their number is what the test says that it checked.
row_of() {
    local part=$1 tried=$2 column=$3
    shift 3
    local log="$work/${part// /-}.log"
    local wrong=0
    "$@" >"$log" 2>&1 || { wrong=1; echo "$part failed; see $log"; }
    [ "$tried" != checks ] || tried=$(sed -n 's/.*assertions: *\([0-9]*\).*/\1/p' "$log")
    case $column in
        unsafe) row "$part" "$tried" 0 -1 -1 -1 -1 $wrong ;;
        exits) row "$part" "$tried" 0 -1 $wrong -1 -1 -1 ;;
    esac
}

step 2 5 "bad input, disks and surroundings"
export HOLDWATER_TALLY=$table
HOLDWATER_FILES=20 HOLDWATER_KILLS=500 build/tests/test_files >"$work/files.log" 2>&1 || files_failed=1
build/tests/test_bad_input >"$work/bad-input.log" 2>&1 || bad_input_failed=1
unset HOLDWATER_TALLY
# A check that is none of the counts, such as a place or a word of a message.
[ -z "${files_failed:-}" ] || row "other checks of files" 1 0 -1 1 -1 -1 -1
[ -z "${bad_input_failed:-}" ] || row "other checks of bad input" 1 0 -1 1 -1 -1 -1
row_of "surroundings" checks exits build/tests/test_surroundings

# A real disk that is full, where one may be mounted: a deck over an earlier one on a disk of 100 sizes.
real_disk() {
    local harmed=0 wrong=0 sizes=100 whole size
    local disk=$PWD/$work/disk
    mkdir -p "$disk"
    whole=$(build/holdwater cards layouts/trips/class-day.toml --out "$work/whole" >/dev/null 2>&1; du -sk "$work/whole" | cut -f1)
    for i in $(seq 1 $sizes); do
        size=$((whole + 4 + i * whole / sizes))
        mount -t tmpfs -o "size=${size}k" tmpfs "$disk" || return 1
        build/holdwater cards layouts/trips/class-day.toml --out "$disk" >/dev/null 2>&1
        (cd "$disk" && sha256sum ./*.pdf) >"$work/before"
        build/holdwater cards layouts/trips/class-day.toml --out "$disk" --copies $((i % 7 + 2)) >/dev/null 2>"$work/err"
        local exit=$?
        if [ $exit = 2 ]; then
            (cd "$disk" && sha256sum --quiet -c) <"$work/before" >/dev/null 2>&1 || harmed=$((harmed + 1))
            [ "$(find "$disk" -type f | wc -l)" = 2 ] || harmed=$((harmed + 1))
        elif [ $exit != 0 ] && [ $exit != 3 ]; then
            wrong=$((wrong + 1))
        fi
        umount "$disk"
    done
    echo "a deck on a full disk|$sizes|0|-1|$wrong|-1|$harmed|-1" >>"$table"
}
export -f real_disk
if ! work=$work table=$table unshare -rm bash -c real_disk 2>"$work/disk.log"; then
    echo "no disk may be mounted here: a deck on a full disk is not tried"
fi

step 3 5 "the program under valgrind"
under_valgrind() {
    local leaks=0 crashes=0 tried=0
    local log=()
    mkdir -p "$work/valgrind"
    printf 'time_min,bath_c,note\n0,62,food in\n60,61,\n120,60,\n' >"$work/valgrind/log.csv"
    while read -r -a words; do
        tried=$((tried + 1))
        # Boiling points, tables and files; a whole plan takes an hour here and is left to the sanitizers.
        valgrind -q --leak-check=full --errors-for-leak-kinds=definite --error-exitcode=99 \
            build/holdwater "${words[@]}" >"$work/valgrind/out" 2>"$work/valgrind/err.$tried"
        case $? in
            99) grep -q "definitely lost" "$work/valgrind/err.$tried" && leaks=$((leaks + 1)) || crashes=$((crashes + 1)) ;;
            13[0-9]) crashes=$((crashes + 1)) ;;
        esac
    done <<END
--help
help plan
boil --altitude 1850m
sources --foods
sources --search film
fingertip
mix --target 60C --altitude 0m --cold 2C
gauge $work/valgrind/log.csv --water 20L --outside 8C
new $work/valgrind/trip.$$.toml
plan tests/trip/bad/many-in-food.toml
plan tests/trip/bad/empty.toml
plan tests/trip/bad/log-faulty.toml
review layouts/trips/class-day.toml tests/trip/bad/log-quotes.csv
hold --kind pork-loin --shape slab --thickness 40mm --bath 62C --start 5C
END
    row "commands under valgrind" $tried $crashes $leaks -1 -1 -1 -1
}
under_valgrind

step 4 5 "random plans, logs and decks"
plans=$((minutes * 4))
row_of "random decks" $plans exits env HOLDWATER_RANDOM_PLANS=$plans build/tests/test_card '-tc=*random trip*'
logs=$((minutes * 30))
row_of "random logs" $logs unsafe env HOLDWATER_RANDOM_LOGS=$logs build/tests/test_review_truth
agree=$((minutes * 2))
row_of "cards against all else" $agree unsafe env HOLDWATER_AGREEMENT=$agree build/tests/test_agreement

step 5 5 "fuzzing, $minutes min a kind"
fuzz() {
    local clang=$work/fuzz kind pids=() log
    cmake -S . -B "$clang" -G Ninja -DCMAKE_CXX_COMPILER=clang++ -DCMAKE_C_COMPILER=clang -DCMAKE_BUILD_TYPE=None \
        -DCMAKE_CXX_FLAGS="-O1 -g1" -DHOLDWATER_UNITY=ON -DHOLDWATER_TESTS=OFF -DHOLDWATER_FUZZ=ON \
        -DHOLDWATER_SANITIZE=address,undefined >"$work/fuzz.log" 2>&1 || return 1
    local kinds=(trip log unit layout drawing wording line)
    cmake --build "$clang" --target "${kinds[@]/#/fuzz_}" >>"$work/fuzz.log" 2>&1 || return 1
    HOLDWATER_SEEDS=$PWD/$work/seeds build/tests/test_fuzz >/dev/null
    for kind in "${kinds[@]}"; do
        mkdir -p "$work/corpus/$kind" "tests/fuzz/corpus/$kind" "$work/found/$kind"
        log=$work/fuzz-$kind.log
        (cd "$work/found/$kind" && "$OLDPWD/$clang/tests/fuzz/fuzz_$kind" "$OLDPWD/$work/corpus/$kind" \
            "$OLDPWD/$work/seeds/$kind" "$OLDPWD/tests/fuzz/corpus/$kind" -max_total_time=$((minutes * 60)) -timeout=10 \
            -rss_limit_mb=2048 -max_len=20000 -print_final_stats=1) >"$log" 2>&1 &
        pids+=($!)
        if [ ${#pids[@]} -ge "$(nproc)" ]; then
            wait "${pids[0]}"
            pids=("${pids[@]:1}")
        fi
    done
    wait
    for kind in "${kinds[@]}"; do
        rmdir --ignore-fail-on-non-empty "tests/fuzz/corpus/$kind"
        local found=$work/found/$kind
        row "fuzzing: $kind" "$(sed -n 's/^stat::number_of_executed_units: *//p' "$work/fuzz-$kind.log")" \
            "$(find "$found" -name 'crash-*' -o -name 'oom-*' | wc -l)" "$(find "$found" -name 'leak-*' | wc -l)" -1 \
            "$(find "$found" -name 'timeout-*' -o -name 'slow-unit-*' | wc -l)" -1 -1
    done
}
fuzz || echo "the fuzzing programs cannot be built; see $work/fuzz.log"

echo
date +%Y-%m-%d
awk -F'|' '
    BEGIN { printf "| what | tried | crashes | leaks | wrong exits | slow | files harmed | unsafe figures |\n|---|---|---|---|---|---|---|---|\n" }
    {
        line = "| " $1 " | " $2
        for (i = 3; i <= 8; ++i) {
            line = line " | " ($i < 0 ? "" : $i)
            broken += $i > 0 ? $i : 0
        }
        print line " |"
    }
    END { exit broken > 0 }' "$table"
