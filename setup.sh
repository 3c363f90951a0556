#!/usr/bin/env bash
# One command from a fresh clone to a result. See the text of `./setup.sh help` below.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")"

# What the program is built from.
build_packages=(
    g++ cmake ninja-build pkg-config ca-certificates
    libeigen3-dev libcgal-dev coinor-libclp-dev libtomlplusplus-dev libcli11-dev nlohmann-json3-dev
    libassimp-dev libcairomm-1.16-dev libpangomm-2.48-dev fonts-dejavu-core zlib1g-dev
    libtinyobjloader-dev libxlsxwriter-dev
)
# What its tests need besides: the test library, independent readers of what the program writes
# (a browser for the models among them), locales, and the fuzzer.
test_packages=(
    catch2 lib3mf-dev python3-ezdxf admesh qpdf poppler-utils calculix-ccx locales
    python3 python3-jsonschema clang libclang-rt-14-dev
    chromium-headless-shell libreoffice-calc
)

usage() {
    cat <<'TEXT'
usage: ./setup.sh demo | test | build

  demo   install what is missing, build the program, write the package of a
         small dome into package/grain-store and say what to open
  test   install what is missing, build everything and run every test
  build  build the program with what is installed already

Packages are installed with apt-get, as root or through sudo, and only those
that are missing.
TEXT
}

say() { printf '\n== %s\n' "$*"; }

fail() {
    printf 'setup.sh: %s\n' "$*" >&2
    exit 1
}

# Prints those of its arguments that are not installed.
missing_packages() {
    local package
    for package in "$@"; do
        if [ "$(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null)" != installed ]; then
            printf '%s\n' "$package"
        fi
    done
}

# Runs apt-get as root, or ends with the list of what to install.
apt_get() {
    local as_root=()
    if [ "$(id -u)" -ne 0 ]; then
        command -v sudo >/dev/null ||
            fail "not root, and there is no sudo. As root: apt-get install ${missing[*]}"
        as_root=(sudo)
    fi
    "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get -y -q "$@"
}

install_packages() {
    if ! command -v dpkg-query >/dev/null || ! command -v apt-get >/dev/null; then
        printf 'setup.sh: no apt-get here; these packages of Debian 12 are needed, by whatever name\n' >&2
        printf 'your system has for them: %s\nGoing on with what there is.\n' "$*" >&2
        return
    fi
    local missing=()
    mapfile -t missing < <(missing_packages "$@")
    [ "${#missing[@]}" -gt 0 ] || return 0
    say "Installing ${missing[*]}"
    local package fresh=yes
    for package in "${missing[@]}"; do
        apt-cache show "$package" >/dev/null 2>&1 || fresh=no
    done
    [ "$fresh" = yes ] || apt_get update
    if ! apt_get install --no-install-recommends "${missing[@]}"; then
        # The package lists may be older than what the mirror holds.
        apt_get update
        apt_get install --no-install-recommends "${missing[@]}" ||
            fail "could not install: ${missing[*]}"
    fi
}

# One compiler per core, but no more than memory allows: the heaviest file takes about 2 GB.
job_count() {
    local cores memory
    cores=$(nproc 2>/dev/null || echo 1)
    memory=$(awk '/^MemAvailable:/ { print int($2 / 2000000) }' /proc/meminfo 2>/dev/null || echo 1)
    [ "${memory:-0}" -ge 1 ] || memory=1
    echo $((cores < memory ? cores : memory))
}

build_program() {
    say 'Building the program'
    # A build directory that is there already keeps its settings.
    [ -f build/build.ninja ] || cmake --preset program
    cmake --build build --target coilwright --parallel "$(job_count)"
}

demo() {
    install_packages "${build_packages[@]}"
    build_program
    say 'Building the package of models/grain-store.toml'
    build/coilwright build models/grain-store.toml --out package/grain-store
    cat <<'TEXT'

Open first   package/grain-store/crew-book.pdf   the sheets that the crew lays the dome from
then         package/grain-store/courses.glb     every tube, in any glTF viewer
and          models/grain-store.toml             the design: change a number, then run
             build/coilwright build models/grain-store.toml --out package/grain-store
TEXT
}

# Every fuzz target for a short while; a crash is kept in build-sanitize/crashes and fails the run.
fuzz() {
    local target name seeds dictionary
    mkdir -p build-sanitize/crashes
    for target in build-sanitize/tests/fuzz/fuzz-*; do
        if [ ! -f "$target" ] || [ ! -x "$target" ]; then continue; fi
        name=${target##*/fuzz-}
        say "Fuzzing: $name"
        mkdir -p "build-sanitize/corpus/$name"
        seeds=(models "tests/fuzz/cases/$name")
        dictionary=()
        [ ! -f "tests/fuzz/$name.dict" ] || dictionary=("-dict=tests/fuzz/$name.dict")
        "$target" -seed=1 -max_total_time="${FUZZ_SECONDS:-30}" -timeout=10 -rss_limit_mb=1024 \
            -max_len=8192 -print_final_stats=1 -verbosity=0 "${dictionary[@]}" \
            -artifact_prefix="build-sanitize/crashes/$name-" \
            "build-sanitize/corpus/$name" "${seeds[@]}"
    done
}

# What reads and lays a design, where hostile input arrives, under the sanitizers: its tests, then the
# fuzz targets. All subjects would take the test command past 40 minutes: cmake --workflow --preset sanitize.
sanitize() {
    local subjects=(base design plan) targets=(fuzzers) subject pattern
    for subject in "${subjects[@]}"; do targets+=("test-$subject"); done
    pattern=$(IFS='|' && printf '%s' "${subjects[*]}")
    say 'Building with AddressSanitizer, UBSan and libFuzzer'
    cmake --preset sanitize
    cmake --build --preset sanitize --target "${targets[@]}" --parallel "$(job_count)"
    say "Testing under the sanitizers: ${subjects[*]}"
    ctest --preset sanitize --tests-regex "^($pattern):"
    fuzz
}

run_tests() {
    install_packages "${build_packages[@]}" "${test_packages[@]}"
    # A node of another origin serves as well, and Debian's would not install beside it.
    if ! command -v node >/dev/null || ! command -v npm >/dev/null; then
        install_packages nodejs npm
    fi
    say 'Building the program and its tests'
    cmake --preset release
    cmake --build --preset release --parallel "$(job_count)"
    sanitize
    # Last, so that its summary closes the output.
    say 'Running every test'
    ctest --preset release
}

case "${1:-help}" in
demo) demo ;;
test) run_tests ;;
build) build_program ;;
help | -h | --help) usage ;;
*)
    usage >&2
    exit 2
    ;;
esac
