#include "scenes/commands/command_line.h"

#include <CLI/CLI.hpp>
#include <optional>
#include <utility>
#include <vector>

namespace overbend::commands {

Option& Option::required() {
    option_->required();
    return *this;
}

Option& Option::check(ValueCheck check) {
    option_->check(CLI::Validator(std::move(check), ""));
    return *this;
}

Option& Option::with_commas() {
    option_->delimiter(',')->allow_extra_args(false);  // what follows may be the case file
    return *this;
}

Option& Option::repeated() {
    option_->expected(1)->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
    return *this;
}

Option& Option::shows_default() {
    option_->capture_default_str();
    return *this;
}

Option& Option::shows_default(const std::string& words) {
    option_->default_str(words);
    return *this;
}

template <typename Value>
Option Command::option(const std::string& name, Value& value, const std::string& words) {
    return Option(app_->add_option(name, value, words));
}

template Option Command::option(const std::string&, std::string&, const std::string&);
template Option Command::option(const std::string&, double&, const std::string&);
template Option Command::option(const std::string&, int&, const std::string&);
template Option Command::option(const std::string&, std::optional<std::string>&, const std::string&);
template Option Command::option(const std::string&, std::optional<double>&, const std::string&);
template Option Command::option(const std::string&, std::optional<int>&, const std::string&);
template Option Command::option(const std::string&, std::vector<std::string>&, const std::string&);
template Option Command::option(const std::string&, std::vector<double>&, const std::string&);
template Option Command::option(const std::string&, std::vector<int>&, const std::string&);

Option Command::option_function(const std::string& name, std::function<void(const std::string&)> take,
                                const std::string& words) {
    return Option(app_->add_option_function<std::string>(name, std::move(take), words));
}

void Command::flag(const std::string& name, bool& value, const std::string& words) {
    app_->add_flag(name, value, words);
}

void Command::footer(const std::string& words) {
    app_->footer(words);
}

void Command::runs(std::function<Exit()> run) {
    app_->callback([run, exit = exit_] { *exit = run(); });
}

namespace {

// No command, or an unknown one: the message lists the known ones.
std::string command_needed(const CLI::App& app, int argc, char** argv) {
    std::string known;
    for (const CLI::App* command : app.get_subcommands({}))
        known += (known.empty() ? "" : ", ") + command->get_name();
    const std::string wrong =
        argc > 1 ? "there is no command \"" + std::string(argv[1]) + "\"" : "no command given";
    return wrong + "; give one of " + known + " (see overbend --help)";
}

}  // namespace

Program::Program(const std::string& words, const std::string& version, const std::string& footer)
    : app_(std::make_unique<CLI::App>(words, "overbend")) {
    app_->require_subcommand(1);
    app_->set_version_flag("--version", version);
    app_->footer(footer);
}

Program::~Program() = default;

Command Program::command(const std::string& name, const std::string& words) {
    return {app_->add_subcommand(name, words), exit_};
}

Exit Program::run(int argc, char** argv) {
    try {
        app_->parse(argc, argv);
    } catch (const CLI::Success& help_or_version) {
        app_->exit(help_or_version);
    } catch (const CLI::ParseError& error) {
        const auto called = app_->get_subcommands();
        if (called.empty()) throw WrongUsage(command_needed(*app_, argc, argv));
        throw WrongUsage(std::string(error.what()) + " (overbend " + called.front()->get_name() + " --help)");
    }
    return exit_;
}

void complain(const std::string& options, const std::string& wrong_and_right) {
    throw CLI::ValidationError(options, wrong_and_right);
}

}  // namespace overbend::commands
