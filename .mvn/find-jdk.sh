# SPDX-License-Identifier: Apache-2.0
# shellcheck shell=sh
# Sourced by mvnw and tubwright: finds a JDK of at least version 25 without starting one where possible.
# Sets and exports JAVA_HOME, or returns 1.

# Major version of the JDK in folder $1, in $jdk_major; fails when there is no JDK.
jdk_version() {
    jdk_major=
    [ -x "$1/bin/java" ] && [ -x "$1/bin/javac" ] || return 1
    if [ -r "$1/release" ]; then
        while IFS='=' read -r key value; do
            [ "$key" = JAVA_VERSION ] && jdk_major=$value && break
        done < "$1/release"
    else
        jdk_major=$("$1/bin/java" -version 2>&1 | sed -n 's/.* version "\([^"]*\)".*/\1/p' | head -n 1)
    fi
    jdk_major=${jdk_major#\"}
    jdk_major=${jdk_major%%[!0-9]*}
    [ -n "$jdk_major" ]
}

# Keeps folder $1 in $jdk_found if it holds a JDK that will do and is older than the one already found:
# the lowest version that will do is the one the project is tested with.
jdk_consider() {
    jdk_version "$1" || return 0
    [ "$jdk_major" -ge 25 ] || return 0
    if [ -z "$jdk_found" ] || [ "$jdk_major" -lt "$jdk_found_major" ]; then
        jdk_found=$1
        jdk_found_major=$jdk_major
    fi
}

# The folder of the JDK whose java is first on PATH, links followed.
jdk_on_path() {
    file=$(command -v java 2>/dev/null) || return 1
    while [ -L "$file" ]; do
        link=$(ls -ld "$file")
        link=${link#*" -> "}
        case $link in
            /*) file=$link ;;
            *) file=${file%/*}/$link ;;
        esac
    done
    (CDPATH='' cd -- "${file%/*}/.." && pwd -P)
}

find_jdk() {
    jdk_found=
    # What the user chose comes first: JAVA_HOME, then PATH. Only then the usual folders.
    [ -n "${JAVA_HOME:-}" ] && jdk_consider "$JAVA_HOME"
    if [ -z "$jdk_found" ]; then
        jdk_path=$(jdk_on_path 2>/dev/null) && jdk_consider "$jdk_path"
    fi
    if [ -z "$jdk_found" ]; then
        for jdk_folder in \
            /usr/lib/jvm/* /usr/lib64/jvm/* /usr/java/* /opt/java/* /opt/jdk* /opt/jdks/* \
            "${HOME:-/nonexistent}"/.jdks/* "${HOME:-/nonexistent}"/.sdkman/candidates/java/* \
            "${HOME:-/nonexistent}"/.asdf/installs/java/* "${HOME:-/nonexistent}"/.local/share/mise/installs/java/* \
            "${HOME:-/nonexistent}"/jdk* \
            /Library/Java/JavaVirtualMachines/*/Contents/Home \
            "${HOME:-/nonexistent}"/Library/Java/JavaVirtualMachines/*/Contents/Home \
            /opt/homebrew/opt/openjdk*/libexec/openjdk.jdk/Contents/Home \
            /usr/local/opt/openjdk*/libexec/openjdk.jdk/Contents/Home; do
            jdk_consider "$jdk_folder"
        done
    fi
    [ -n "$jdk_found" ] || return 1
    JAVA_HOME=$jdk_found
    export JAVA_HOME
}

say_how_to_get_a_jdk() {
    cat >&2 <<'TEXT'
Tubwright needs a Java Development Kit, version 25 or newer, and found none.
Install one:
  Debian 13, Ubuntu 25.10 or newer   sudo apt-get install openjdk-25-jdk-headless
  Fedora                             sudo dnf install java-25-openjdk-devel
  macOS with Homebrew                brew install openjdk@25
  anything else                      unpack any OpenJDK 25 archive (Eclipse Temurin, for instance)
                                     into a folder below ~/.jdks
Looked at: JAVA_HOME, java on PATH, /usr/lib/jvm, ~/.jdks, ~/.sdkman and the like.
If it is elsewhere, set JAVA_HOME to its folder.
TEXT
}
