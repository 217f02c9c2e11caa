#include "render/picture/flags.h"

#include <algorithm>

namespace overbend::picture {

int set_steps(std::vector<Flag>& flags, double gap) {
    int steps = 0;
    for (std::size_t i = flags.size(); i-- > 0;) {
        Flag& flag = flags[i];
        flag.step = 0;
        for (std::size_t j = i + 1; j < flags.size(); ++j)
            if (flags[j].at < flag.at + flag.width + gap) flag.step = std::max(flag.step, flags[j].step + 1);
        steps = std::max(steps, flag.step + 1);
    }
    return steps;
}

}  // namespace overbend::picture
