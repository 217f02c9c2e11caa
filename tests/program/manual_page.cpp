#include "tests/program/manual_page.h"

#include <algorithm>
#include <sstream>

namespace overbend::tests {

std::vector<Block> blocks_of(const std::string& page) {
    std::vector<Block> blocks;
    const std::string fence = "```";
    bool inside = false;
    for (std::size_t at = 0, end = 0; at < page.size(); at = end + 1) {
        end = std::min(page.find('\n', at), page.size() - 1);
        const std::string line = page.substr(at, end + 1 - at);
        if (line.compare(0, fence.size(), fence) == 0) {
            inside = !inside;
            if (inside) blocks.push_back({line.substr(3, line.find_last_not_of("\n") - 2), "", end + 1});
        } else if (inside) {
            blocks.back().text += line;
        }
    }
    return blocks;
}

std::vector<std::string> overbend_commands(const Block& block) {
    std::vector<std::string> commands;
    std::istringstream lines(block.text);
    std::string command;
    for (std::string line; std::getline(lines, line);) {
        command += line;
        if (!command.empty() && command.back() == '\\') {
            command.pop_back();
            continue;
        }
        if (command.compare(0, 9, "overbend ") == 0) commands.push_back(command.substr(9));
        command.clear();
    }
    return commands;
}

}  // namespace overbend::tests
