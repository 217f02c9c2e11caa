#include "sim/tool/tool_set.h"

namespace overbend::tool {

const char* role_word(Role role) {
    switch (role) {
        case Role::punch:
            return "punch";
        case Role::die:
            return "die";
        case Role::pad:
            return "pad";
        case Role::clamp:
            return "clamp";
        case Role::holder:
        case Role::die_holder:
            return "holder";
        case Role::ram:
            return "ram";
        case Role::bed:
            return "bed";
        case Role::gauge:
            return "gauge";
    }
    return "tool";
}

}  // namespace overbend::tool
