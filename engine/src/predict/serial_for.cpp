#include "strandline/predict.h"

namespace strandline {

void serial_for(int count, const std::function<void(int, int)>& body) {
  if (count > 0) body(0, count);
}

}  // namespace strandline
