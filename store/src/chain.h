#pragma once

#include <string>

#include "strandline/store/store.h"

namespace strandline::store {

// BLAKE2b-256 of the hash before and of every field of the entry, each with its length; 32 bytes. The chain
// starts from "".
std::string chain_hash(const std::string& before, const Entry& entry);
std::string hexadecimal(const std::string& bytes);

}  // namespace strandline::store
