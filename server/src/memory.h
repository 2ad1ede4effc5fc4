// Memory of finished work goes back to the machine.
#pragma once

namespace strandline::server {

// For the whole process, before its work begins. Nothing where the C library is not glibc.
void keep_memory_small();
// After heavy work.
void give_memory_back();

}  // namespace strandline::server
