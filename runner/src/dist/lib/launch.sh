# Finds a Java and starts the program with it. Read by the launchers, never run by itself; POSIX
# shell alone, since it has to work with whatever sh a system has.

fail() {
  printf 'broodtide: %s\n' "$1" >&2
  exit 2
}

# In the plain C locale Java cannot open files whose names have accents. macOS does not care.
case $(locale charmap 2>/dev/null) in ANSI_X3.4-1968 | US-ASCII)
  [ "$(uname 2>/dev/null)" = Darwin ] || { LC_ALL=C.UTF-8 && export LC_ALL; } ;;
esac

# The first figure of a Java's version: 17 for 17.0.15, 1 for 1.8; nothing when it does not start.
# A JDK says it in a file, which is read faster than a Java is started.
java_version() {
  real=$1
  while [ -h "$real" ]; do
    link=$(ls -l -- "$real")
    link=${link#*" -> "}
    case $link in
      /*) real=$link ;;
      *) real=${real%/*}/$link ;;
    esac
  done
  if [ -r "${real%/*}/../release" ]; then
    sed -n 's/^JAVA_VERSION="\([0-9][0-9]*\).*/\1/p' "${real%/*}/../release"
  else
    "$1" -version 2>&1 </dev/null | sed -n 's/^[^"]*version "\([0-9][0-9]*\).*/\1/p' | sed 1q
  fi
}

# Takes the Java at $1 if it is one and new enough; otherwise notes why not.
take_java() {
  [ -f "$1" ] && [ -x "$1" ] || return 1
  case $looked in *"
  $1:"*) return 1 ;; esac
  version=$(java_version "$1")
  if [ -z "$version" ]; then
    looked="$looked
  $1: does not start"
    return 1
  fi
  if [ "$version" -lt 17 ]; then
    if [ "$version" -eq 1 ]; then version=8; fi
    looked="$looked
  $1: is Java $version, too old"
    return 1
  fi
  java=$1
}

# Looks where JAVA_HOME points, along PATH, then where systems keep their Javas. Sets java.
find_java() {
  java=
  looked=
  if [ -n "${JAVA_HOME:-}" ]; then
    take_java "$JAVA_HOME/bin/java" && return 0
    [ -x "$JAVA_HOME/bin/java" ] || looked="
  $JAVA_HOME/bin/java, where JAVA_HOME points: there is no Java"
  fi
  old_ifs=$IFS
  IFS=:
  set -f
  for folder in ${PATH:-/usr/local/bin:/usr/bin:/bin}; do
    IFS=$old_ifs
    set +f
    if take_java "${folder:-.}/java"; then return 0; fi
  done
  IFS=$old_ifs
  set +f
  for candidate in \
    /Library/Java/JavaVirtualMachines/*/Contents/Home/bin/java \
    "${HOME:-}"/Library/Java/JavaVirtualMachines/*/Contents/Home/bin/java \
    /opt/homebrew/opt/openjdk*/bin/java /usr/local/opt/openjdk*/bin/java \
    /usr/lib/jvm/*/bin/java /usr/java/*/bin/java /opt/*/bin/java "${HOME:-}"/.jdks/*/bin/java; do
    if take_java "$candidate"; then return 0; fi
  done
  fail "needs Java 17 or newer, and none was found.
Looked where JAVA_HOME points, along PATH, and where Java is usually kept:${looked:-
  there is no Java at all}
Java is free. Install version 17 or newer from https://adoptium.net, or from where
your system gets its programs, then start Broodtide again."
}

# Whether the user's own settings choose a collector; Java refuses to start with two.
own_collector() {
  case " ${JAVA_TOOL_OPTIONS:-} ${JDK_JAVA_OPTIONS:-} ${_JAVA_OPTIONS:-} " in
    *" -XX:+Use"*GC" "*) return 0 ;;
  esac
  return 1
}

# Becomes the program: start JAR ARCHIVE ARGUMENTS..., the archive of classes may be empty.
start() {
  jar=$1
  shared=$2
  shift 2
  case $jar in *:*) fail "cannot start from a folder whose name holds a colon, which Java takes for
the end of the name. Rename the folder or move it: $jar" ;; esac
  # Asked here, for inside $(...) standard output is a pipe.
  if [ -t 1 ]; then terminal=true; else terminal=false; fi
  if [ -t 2 ]; then live=true; else live=false; fi
  if [ -t 1 ] && [ -z "${COLUMNS:-}" ]; then
    COLUMNS=$(tput cols 2>/dev/null || echo 80)
    export COLUMNS
  fi
  # A run of a few seconds is over before the second compiler's work could pay. Runs over many
  # washes, and over more simulated colonies than usual, are not.
  compilers=4
  case "${1:-}" in
    wash | growth | forecast | compare | demo | windows | worked | backtest | study | about) compilers=1 ;;
  esac
  before=
  for word in "$@"; do
    # More than usual is a number of five digits or more.
    case "$before $word" in
      "--colonies "[1-9][0-9][0-9][0-9][0-9]* | *" --colonies="[1-9][0-9][0-9][0-9][0-9]*) compilers=4 ;;
    esac
    before=$word
    case "$word" in
      -h | --help | -V | --version) compilers=1 && break ;;
      - | --washes=*) compilers=4 ;;
      *) if [ -f "$word" ] && [ "$(head -n 31 "$word" | wc -l)" -gt 30 ]; then compilers=4; fi ;;
    esac
  done
  set -- -XX:TieredStopAtLevel=$compilers -Xshare:auto -Djava.awt.headless=true \
    -Dstdout.encoding=UTF-8 -Dbroodtide.terminal=$terminal -Dbroodtide.live=$live -jar "$jar" "$@"
  # An archive that was damaged must be refused by the JVM, not read.
  if [ -n "$shared" ]; then
    set -- "-XX:SharedArchiveFile=$shared" -XX:+VerifySharedSpaces -Xlog:cds=off -Xlog:cds+dynamic=off "$@"
  fi
  if ! own_collector; then set -- -XX:+UseSerialGC "$@"; fi
  exec "$java" "$@"
}
