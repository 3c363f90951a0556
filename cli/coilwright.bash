# Bash completion of coilwright. Needs nothing but bash 4.

# Fills COMPREPLY with files of the design's kind and with folders to go into.
_coilwright_files() {
    local ending=$1 word=$2 path
    mapfile -t COMPREPLY < <(compgen -d -- "$word")
    while IFS= read -r path; do
        if [ ! -d "$path" ]; then COMPREPLY+=("$path"); fi
    done < <(compgen -f -X "!*$ending" -- "$word")
    compopt -o filenames 2>/dev/null
}

_coilwright_words() {
    mapfile -t COMPREPLY < <(compgen -W "$1" -- "$2")
}

# Completes the last name of a list with commas: crew-book,mod -> crew-book,models
_coilwright_list() {
    local before=""
    case $2 in
    *,*) before=${2%,*}, ;;
    esac
    mapfile -t COMPREPLY < <(compgen -P "$before" -W "$1" -- "${2##*,}")
}

_coilwright() {
    local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]}
    local command="" at
    COMPREPLY=()
    for ((at = 1; at < COMP_CWORD; ++at)); do
        case ${COMP_WORDS[at]} in
        new | check | courses | takeoff | vary | build)
            command=${COMP_WORDS[at]}
            break
            ;;
        esac
    done

    # A value of the option before it.
    case $command:$before in
    new:--unit) _coilwright_words "ft m" "$word" && return ;;
    new:--use) _coilwright_words "store habitable bath shower tiny-house" "$word" && return ;;
    new:--profile) _coilwright_words "pointed round catenary parabola" "$word" && return ;;
    new:--door) _coilwright_words "pointed round segmental square none" "$word" && return ;;
    new:--out) _coilwright_files .toml "$word" && return ;;
    takeoff:--works | vary:--works | build:--works) _coilwright_files .works "$word" && return ;;
    vary:--set) _coilwright_words "diameter= springline= rise= lay-flat= course=" "$word" && return ;;
    vary:--chart) _coilwright_files .svg "$word" && return ;;
    vary:--journal) _coilwright_files .journal "$word" && return ;;
    vary:--threads) return ;;
    new:--name | new:--diameter | new:--windows | build:--tolerance | build:--plan-height | build:--section-bearing | build:--tile | build:--view-bearing | build:--kerf) return ;;
    build:--only) _coilwright_list "crew-book drawings models schedule checks take-off templates" "$word" && return ;;
    build:--formats) _coilwright_list "glb obj stl ply dae 3mf ifc" "$word" && return ;;
    build:--unit) _coilwright_words "m cm mm ft in" "$word" && return ;;
    build:--paper) _coilwright_words "letter a4" "$word" && return ;;
    build:--sheet)
        _coilwright_words "a4 a3 a2 a1 letter tabloid arch-a arch-b arch-c arch-d" "$word" && return
        ;;
    build:--out)
        mapfile -t COMPREPLY < <(compgen -d -- "$word")
        compopt -o filenames 2>/dev/null
        return
        ;;
    esac

    case $command:$word in
    :*) _coilwright_words "new check courses takeoff vary build --help --version" "$word" ;;
    new:*) _coilwright_words \
        "--name --unit --use --diameter --profile --door --windows --out --force --help" "$word" ;;
    check:-*) _coilwright_words "--json --long --remedies --help" "$word" ;;
    courses:-*) _coilwright_words "--json --csv --help" "$word" ;;
    takeoff:-*) _coilwright_words "--works --json --csv --help" "$word" ;;
    vary:-*) _coilwright_words "--set --works --csv --chart --journal --threads --help" "$word" ;;
    build:-*) _coilwright_words \
        "--out --only --works --paper --sheet --plan-height --section-bearing --tile --view-bearing --kerf --tolerance --formats --unit --y-up --ifc2x3 --remedies --help" "$word" ;;
    *) _coilwright_files .toml "$word" ;;
    esac
}

complete -F _coilwright coilwright
