// Small bodies of the door: an object with texts, nothing else.
#pragma once

#include <initializer_list>
#include <map>

#include "http.h"
#include "strandline/wire/json.h"

namespace strandline::server {

// Text by key. Problems: those of wire::parse, missing_key {key} of `needed`, unknown_key {key, known}, wrong_type.
using Texts = std::map<std::string, std::string>;
Result<Texts> texts_of(const httplib::Request& request, std::initializer_list<std::string_view> needed,
                       std::initializer_list<std::string_view> optional = {});

}  // namespace strandline::server
