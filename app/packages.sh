# Debian packages by purpose, and the one function that installs those missing. Sourced by app/start, tests/run and
# .ci/run. Each package stands in DEVELOPERS.md with its reason; a test compares.

# Needed to build the program.
build_packages=(
  g++ cmake ninja-build
  qt6-base-dev libqt6opengl6-dev qt6-charts-dev qt6-svg-dev qt6-tools-dev qt6-l10n-tools
  nlohmann-json3-dev libqpdf-dev
  fonts-roboto-unhinted fonts-routed-gothic
)

# Needed besides those to build and run the tests.
test_packages=(
  libgtest-dev librapidcheck-dev libmuparser-dev ngspice python3
  xvfb xauth openbox xdotool poppler-utils imagemagick
  desktop-file-utils appstream shared-mime-info
  dbus-daemon at-spi2-core python3-pyatspi
  ccache mold
)

# Needed besides those for the checks of a submission.
check_packages=(git clang clang-format clang-tidy libclang-rt-14-dev)

# Needed for the benchmarks only.
bench_packages=(libbenchmark-dev)

# Prints those of the named packages that are not installed, one a line.
missing_packages() {
  local installed package
  installed=$(dpkg-query -W -f='${db:Status-Status} ${Package}\n' "$@" 2>/dev/null || true)
  for package in "$@"; do
    if ! grep -qxF "installed $package" <<<"$installed"; then
      printf '%s\n' "$package"
    fi
  done
}

# Installs those of the named packages that are missing, and nothing else. With none missing it neither needs the
# network nor root.
install_missing() {
  local -a missing as_root=()
  if ! command -v dpkg-query >/dev/null; then
    printf 'This is not a Debian system, so nothing is installed. Needed here (Debian names): %s\n' "$*" >&2
    return 0
  fi
  mapfile -t missing < <(missing_packages "$@")
  if ((${#missing[@]} == 0)); then
    return 0
  fi
  if ((EUID != 0)); then
    if ! command -v sudo >/dev/null; then
      printf 'Missing packages. As root, run:\n  apt-get install --no-install-recommends %s\n' "${missing[*]}" >&2
      return 1
    fi
    as_root=(sudo)
  fi
  printf 'Installing %d missing packages: %s\n' "${#missing[@]}" "${missing[*]}"
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get update -qq
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive \
    apt-get install -y -qq -o Dpkg::Use-Pty=0 -o Acquire::Retries=3 --no-install-recommends "${missing[@]}"
}

# The arguments that let CMake use a compiler cache where there is one.
compiler_cache() {
  if command -v ccache >/dev/null; then
    printf '%s\n' -DCMAKE_CXX_COMPILER_LAUNCHER=ccache
  fi
}

# Configures $1 (build folder) for the checkout $2 with the further arguments, unless it stands configured with the very
# same ones; ninja itself sees changed CMake files. A folder left behind by a checkout at another place is made anew.
configure_once() {
  local folder=$1 checkout=$2
  shift 2
  local asked="$checkout $*" cache="$folder/CMakeCache.txt"
  if [[ -f $cache ]] && ! grep -qxF "CMAKE_HOME_DIRECTORY:INTERNAL=$checkout" "$cache"; then
    rm -rf -- "$folder"
  fi
  if [[ -f $folder/build.ninja && -f $folder/configured && $(<"$folder/configured") == "$asked" ]]; then
    return 0
  fi
  mkdir -p -- "$folder"
  cmake -S "$checkout" -B "$folder" -G Ninja "$@"
  printf '%s\n' "$asked" >"$folder/configured"
}
