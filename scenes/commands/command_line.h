// The command line: commands, their options, and what is said of each. CLI11 reads it, in command_line.cpp
// alone: its header costs ten seconds of compiling wherever it is included.

#pragma once

#include <functional>
#include <memory>
#include <stdexcept>
#include <string>
#include <utility>

namespace CLI {
class App;
class Option;
}  // namespace CLI

namespace overbend::commands {

// What a command's exit status says.
enum class Exit {
    done = 0,          // done, and feasible where there is a verdict
    verdict_no = 1,    // done, and the verdict is no
    bad_input = 2,     // bad input or usage
    not_computed = 3,  // could not be computed
};

// What is wrong with the text of a value, with what would be right; nothing when it is right.
using ValueCheck = std::function<std::string(const std::string&)>;

class Option {
  public:
    explicit Option(CLI::Option* option) : option_(option) {}
    Option& required();
    Option& check(ValueCheck check);
    Option& with_commas();  // a list: values with commas between, in one word
    Option& repeated();     // a list: one value each time that the option is given
    Option& shows_default();
    Option& shows_default(const std::string& words);

  private:
    CLI::Option* option_;
};

class Command {
  public:
    // Value: a text, a number, a whole number; optional or a list of these. It must stay where it is.
    template <typename Value>
    Option option(const std::string& name, Value& value, const std::string& words);
    // With a check, and its default shown.
    template <typename Value>
    void option(const std::string& name, Value& value, const std::string& words, ValueCheck check) {
        option(name, value, words).check(std::move(check)).shows_default();
    }
    Option option_function(const std::string& name, std::function<void(const std::string&)> take,
                           const std::string& words);
    void flag(const std::string& name, bool& value, const std::string& words);
    void footer(const std::string& words);
    void runs(std::function<Exit()> run);  // when it is called

  private:
    friend class Program;
    Command(CLI::App* app, Exit& exit) : app_(app), exit_(&exit) {}

    CLI::App* app_;
    Exit* exit_;  // the program's
};

// The program: what it is for, and its commands.
class Program {
  public:
    // footer: below the commands in --help.
    Program(const std::string& words, const std::string& version, const std::string& footer);
    ~Program();
    Command command(const std::string& name, const std::string& words);
    // Runs the command that is called, or prints what --help and --version ask for.
    // Throws WrongUsage: words that cannot be read as a command with its options.
    Exit run(int argc, char** argv);

  private:
    std::unique_ptr<CLI::App> app_;
    Exit exit_ = Exit::done;
};

struct WrongUsage : std::runtime_error {
    using std::runtime_error::runtime_error;
};

// For a command's function: options that do not go together, or a value that no check of one alone finds.
[[noreturn]] void complain(const std::string& options, const std::string& wrong_and_right);

}  // namespace overbend::commands
