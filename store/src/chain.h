#pragma once

#include <initializer_list>
#include <string>

#include "strandline/store/store.h"

namespace strandline::store {

// BLAKE2b-256 of fields, each with its length; 32 bytes.
std::string hash_of(std::initializer_list<std::string> fields);
// Of the hash before and of every field of the fact as it is stored. The chain starts from "".
std::string chain_hash(const std::string& before, const Fact& stored);
std::string hexadecimal(const std::string& bytes);

}  // namespace strandline::store
