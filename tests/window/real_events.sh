#!/bin/sh
# The program's window used from outside, with a mouse and keys that X takes for real ones: scenes and theme by
# keys and by mouse, a window that closes by its key and remembers. $1: the program; a display must be there.
set -eu
program=$1
folder=$(mktemp -d)
shown=
# Whatever happens, no window is left open.
finish() {
    if [ -n "$shown" ] && kill -0 "$shown" 2>/dev/null; then kill "$shown"; fi
    rm -rf "$folder"
}
trap finish EXIT
export XDG_STATE_HOME="$folder/state"
memory=$XDG_STATE_HOME/overbend/window.json

fail() {
    echo "real_events: $1" >&2
    exit 1
}

# Window's id in $window, its process in $shown.
show() {
    "$program" show "$@" >"$folder/out" 2>"$folder/error" &
    shown=$!
    window=$(timeout 30 xdotool search --sync --onlyvisible --name '^overbend') || fail "no window came"
    xdotool windowfocus --sync "$window"
    sleep 1
}
press() {
    xdotool key --clearmodifiers "$1"
    sleep 0.3
}
is_closed() {
    tries=0
    while kill -0 "$shown" 2>/dev/null; do
        tries=$((tries + 1))
        [ $tries -lt 100 ] || fail "Ctrl+Q did not close it"
        sleep 0.1
    done
    status=0
    wait "$shown" || status=$?
    shown=
    [ $status = 0 ] || fail "it ended with status $status: $(cat "$folder/error")"
}
remembers() {
    grep -q "$1" "$memory" || fail "it does not remember $1: $(cat "$memory")"
}

# Closed while the job is still running.
show cases/cable-hook/case.toml
xdotool mousemove --window "$window" 400 300 click 4 click 5
press space
press F4
press ctrl+q
is_closed
remembers '"dark": true'
remembers '"scene": "process"'

# As it was left, and the bench; a mouse that drags and turns its wheel.
show --bench
xdotool mousemove --window "$window" 400 300 mousedown 1 mousemove_relative --sync 0 40 mouseup 1
press F4
press F1
press Escape
press F3
press ctrl+q
is_closed
remembers '"dark": false'
remembers '"scene": "bench"'

# By Tab alone: the first control is the scene of the process.
show --bench
press Tab
press space
press ctrl+q
is_closed
remembers '"scene": "process"'
echo "real_events: all of it went"
