#include "io/command_line.h"

#include <iostream>

int main(int count, char** values) {
    return swale::run_command_line({values + (count > 0 ? 1 : 0), values + count}, std::cout, std::cerr);
}
