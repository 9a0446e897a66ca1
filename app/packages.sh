# What the scripts need from Debian, and how it gets there. Sourced by app/run and tests/run, which set
# script_name first.
# shellcheck shell=bash

# To build and run the program: the compiler and the build tools; Qt (widgets, printing, the X11 and offscreen
# platforms come along); Eigen for the solver; Boost.Math, its headers alone, for the quantiles of statistics; Qt's
# writer of SVG; the car file's JSON reader; the font.
# shellcheck disable=SC2034  # read by the scripts that source this
program_packages=(g++ cmake ninja-build qt6-base-dev qt6-svg-dev libeigen3-dev libboost-math-dev nlohmann-json3-dev
    fonts-inter)
# To test: GoogleTest and GoogleMock; Google Benchmark; Simbody, Ceres and SUNDIALS as outside references for the
# solvers; Poppler's pdfinfo, pdffonts and pdftotext, to read the printed sheets with another's eyes, and ezdxf for the
# drawings.
# shellcheck disable=SC2034
test_packages=(libgtest-dev libgmock-dev libbenchmark-dev libsimbody-dev libceres-dev libsundials-dev
    poppler-utils python3-ezdxf)
# To make the Debian package, and to try it.
# shellcheck disable=SC2034
packing_packages=(dpkg-dev)
# shellcheck disable=SC2034
package_test_packages=(lintian desktop-file-utils appstream shared-mime-info)
# Git, to tell which sources are there and which are recent.
# shellcheck disable=SC2034
lint_packages=(clang-format clang-tidy git)
# The fuzzer's runtime is a package of its own, which clang only recommends.
# shellcheck disable=SC2034
fuzz_packages=(clang libclang-rt-dev)

# Says one line on standard error, under the script's name.
say() {
    printf '%s: %s\n' "$script_name" "$*" >&2
}

# Ends the script with 3, which can't be taken for one of the program's own exit codes 0, 1 and 2.
give_up() {
    say "$@"
    exit 3
}

is_installed() {
    [[ $(dpkg-query --show --showformat='${db:Status-Status}' "$1" 2>/dev/null) == installed ]]
}

# Runs a command as root: as it is where we are root, else through sudo.
as_root() {
    if ((EUID == 0)); then
        "$@" </dev/null
    else
        sudo -- "$@"
    fi
}

# Installs those of the named packages that are missing, by apt-get; touches nothing where all are there.
install_missing() {
    local package missing=()
    if ! command -v dpkg-query >/dev/null; then
        say "this is no Debian system, so nothing is installed here; on Debian 12 these are used: $*"
        return
    fi
    for package in "$@"; do
        is_installed "$package" || missing+=("$package")
    done
    ((${#missing[@]})) || return 0
    if ((EUID != 0)) && ! command -v sudo >/dev/null; then
        give_up "missing packages, and neither root nor sudo to install them; as root:" \
            "apt-get install ${missing[*]}"
    fi
    say "installing ${missing[*]}"
    as_root apt-get update -q >&2 || say "apt-get update failed; going on with the package lists as they are"
    as_root env DEBIAN_FRONTEND=noninteractive \
        apt-get install -y -q --no-install-recommends "${missing[@]}" >&2 \
        || give_up "could not install ${missing[*]}"
}

# Takes the lock of a build folder on descriptor 9, waiting while another start or test run holds it.
lock_build() {
    local build=$1
    { mkdir -p "$build" && exec 9>"$build/.lock"; } 2>/dev/null \
        || give_up "can't write to $build; the checkout must be writable for the build"
    if ! flock --nonblock 9; then
        say "another build in $build is under way; waiting for it"
        flock 9
    fi
}

# configure SOURCE BUILD OPTION...: sets a build folder up, unless that was done for this very checkout by this
# very script. ccache saves time where it is installed and is not required.
configure() {
    local source=$1 build=$2 options=()
    shift 2
    if grep -qsxF "CMAKE_HOME_DIRECTORY:INTERNAL=$source" "$build/CMakeCache.txt"; then
        [[ $build/build.ninja -nt $0 ]] && return 0
    else
        options+=(--fresh)
    fi
    if command -v ccache >/dev/null; then
        options+=(-DCMAKE_CXX_COMPILER_LAUNCHER=ccache)
    fi
    cmake "${options[@]}" -S "$source" -B "$build" -G Ninja "$@" >&2
}
