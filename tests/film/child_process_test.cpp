// Another program at work for us: what it is given and says, how it ends, and that it never stays.

#include "render/film/child_process.h"

#include <doctest/doctest.h>
#include <unistd.h>

#include <csignal>
#include <string>
#include <system_error>
#include <vector>

using namespace overbend::film;

namespace {

std::vector<std::uint8_t> bytes(std::size_t count) {
    std::vector<std::uint8_t> all(count);
    for (std::size_t i = 0; i < count; ++i) all[i] = static_cast<std::uint8_t>('a' + i % 26);
    return all;
}

bool is_there(const std::string& pid) {
    return ::kill(static_cast<pid_t>(std::stol(pid)), 0) == 0;
}

}  // namespace

TEST_CASE("a child gets all bytes, and its words are kept") {
    // More than any pipe holds, both ways.
    const std::vector<std::uint8_t> given = bytes(3000000);
    ChildProcess cat({"cat"});
    REQUIRE(cat.write(given.data(), given.size(), {}));
    CHECK(cat.finish({}) == 0);
    CHECK(cat.output() == std::string(given.begin(), given.end()));
    CHECK(cat.last_words().empty());
}

TEST_CASE("a second input stands at descriptor 3") {
    ChildProcess cat({"sh", "-c", "cat <&3"}, "palette");
    CHECK(cat.finish({}) == 0);
    CHECK(cat.output() == "palette");
}

TEST_CASE("status, signal and last words are told") {
    ChildProcess failing({"sh", "-c", "echo first >&2; echo 'last one' >&2; exit 7"});
    CHECK(failing.finish({}) == 7);
    CHECK(failing.last_words() == "last one");
    ChildProcess killed({"sh", "-c", "kill -KILL $$"});
    CHECK(killed.finish({}) == 128 + SIGKILL);
}

TEST_CASE("a program that is not there is an error of the system") {
    bool refused = false;
    try {
        ChildProcess nobody({"no-such-program-anywhere"});
    } catch (const std::system_error& error) {
        refused = error.code() == std::errc::no_such_file_or_directory;
    }
    CHECK(refused);
}

TEST_CASE("one that ends early takes no more, and no signal comes of it") {
    const std::vector<std::uint8_t> given = bytes(5000000);
    ChildProcess gone({"true"});
    CHECK_FALSE(gone.write(given.data(), given.size(), {}));
    CHECK(gone.finish({}) == 0);
}

TEST_CASE("waiting can be given up, and the child has ended then") {
    const std::vector<std::uint8_t> given = bytes(5000000);
    std::string pid;
    {
        ChildProcess sleeper({"sh", "-c", "echo $$; exec sleep 100"});
        int asked = 0;
        // It never reads: the write would wait for ever.
        CHECK_THROWS_AS(sleeper.write(given.data(), given.size(), [&] { return ++asked < 4; }), Interrupted);
        CHECK_THROWS_AS(sleeper.finish([] { return false; }), Interrupted);
        pid = sleeper.output();
        REQUIRE_FALSE(pid.empty());
        CHECK(is_there(pid));
    }
    CHECK_FALSE(is_there(pid));
}

TEST_CASE("what a child has started ends with it") {
    std::string pid;
    {
        ChildProcess parent({"sh", "-c", "sleep 100 & echo $!; wait"});
        int asked = 0;
        CHECK_THROWS_AS(parent.finish([&] { return ++asked < 10; }), Interrupted);
        pid = parent.output();
        REQUIRE_FALSE(pid.empty());
        CHECK(is_there(pid));
    }
    // Its end is its own: it may take a moment.
    for (int i = 0; i < 500 && is_there(pid); ++i) ::usleep(10000);
    CHECK_FALSE(is_there(pid));
}
