#include "io/command_line.h"

#include <malloc.h>

#include <csignal>
#include <iostream>

int main(int count, char** values) {
    // Bands of some ten MB come and go with every Newton step: keep their memory instead of faulting it in page by page.
    mallopt(M_MMAP_THRESHOLD, 1 << 30);
    mallopt(M_TRIM_THRESHOLD, 1 << 30);
    std::signal(SIGXFSZ, SIG_IGN);  // a file that may not grow is an error with a sentence
    return swale::run_command_line({values + (count > 0 ? 1 : 0), values + count}, std::cout, std::cerr);
}
