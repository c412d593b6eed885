#include "io/version.h"

namespace swale {

std::string version() {
    return SWALE_VERSION;
}

}  // namespace swale
