// The fenced blocks of a page of the manual.

#pragma once

#include <string>
#include <vector>

namespace overbend::tests {

struct Block {
    std::string fence;      // what stands behind the opening ```: "sh", "sh slow", "toml", "text"
    std::string text;       // each line ending in a newline
    std::size_t begin = 0;  // where the text begins in the page
};

std::vector<Block> blocks_of(const std::string& page);

// The commands of a block that begin with "overbend", without that word; a line that ends in \ goes on.
std::vector<std::string> overbend_commands(const Block& block);

}  // namespace overbend::tests
