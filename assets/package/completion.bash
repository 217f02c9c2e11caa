# Words that go on in a command line of overbend, as its own --help lists them.
_overbend() {
    local word=${COMP_WORDS[COMP_CWORD]}
    if [ "$COMP_CWORD" = 1 ]; then
        COMPREPLY=($(compgen -W "$(overbend --help | sed -n '/^Subcommands:/,$s/^  \([a-z]*\) .*/\1/p')" -- "$word"))
    elif [[ $word == -* ]]; then
        COMPREPLY=($(compgen -W "$(overbend "${COMP_WORDS[1]}" --help | sed -n 's/^  .*\(--[a-z-]*\).*/\1/p')" -- "$word"))
    else
        COMPREPLY=($(compgen -f -X '!*.toml' -- "$word") $(compgen -d -- "$word"))
    fi
}
complete -o filenames -F _overbend overbend
