// The words of every enumeration that a document or an answer may hold.
#pragma once

#include "strandline/head.h"
#include "strandline/illuminant.h"
#include "strandline/law.h"
#include "strandline/misread.h"
#include "strandline/shelf.h"
#include "strandline/wire/fields.h"

namespace strandline::wire {

using std::string_view_literals::operator""sv;

template <class E, std::size_t N>
using WordList = std::array<std::pair<E, std::string_view>, N>;

template <>
struct Words<Tone> {
  static constexpr std::string_view name = "Tone";
  static constexpr WordList<Tone, kTones> list{{{Tone::natural, "natural"},
                                                {Tone::ash, "ash"},
                                                {Tone::violet, "violet"},
                                                {Tone::beige, "beige"},
                                                {Tone::gold, "gold"},
                                                {Tone::copper, "copper"},
                                                {Tone::red, "red"},
                                                {Tone::green, "green"}}};
};

template <>
struct Words<KnownBy> {
  static constexpr std::string_view name = "KnownBy";
  static constexpr WordList<KnownBy, kKnownBy> list{
      {{KnownBy::white_hair, "white_hair"}, {KnownBy::stated_hair, "stated_hair"}, {KnownBy::name, "name"}}};
};

template <>
struct Words<FibreKind> {
  static constexpr std::string_view name = "FibreKind";
  static constexpr WordList<FibreKind, 2> list{{{FibreKind::pigmented, "pigmented"}, {FibreKind::white, "white"}}};
};

template <>
struct Words<ReadIn> {
  static constexpr std::string_view name = "ReadIn";
  static constexpr WordList<ReadIn, 3> list{
      {{ReadIn::unknown, "unknown"}, {ReadIn::window, "window"}, {ReadIn::lamp, "lamp"}}};
};

template <>
struct Words<MisreadReading> {
  static constexpr std::string_view name = "MisreadReading";
  static constexpr WordList<MisreadReading, 3> list{
      {{MisreadReading::level, "level"}, {MisreadReading::white, "white"}, {MisreadReading::porosity, "porosity"}}};
};

template <>
struct Words<ColourOrigin> {
  static constexpr std::string_view name = "ColourOrigin";
  static constexpr WordList<ColourOrigin, 4> list{{{ColourOrigin::natural, "natural"},
                                                   {ColourOrigin::tinted, "tinted"},
                                                   {ColourOrigin::lightened, "lightened"},
                                                   {ColourOrigin::direct, "direct"}}};
};

template <>
struct Words<ServiceKind> {
  static constexpr std::string_view name = "ServiceKind";
  static constexpr WordList<ServiceKind, 14> list{{{ServiceKind::permed, "permed"},
                                                   {ServiceKind::straightened_mild, "straightened_mild"},
                                                   {ServiceKind::straightened_alkaline, "straightened_alkaline"},
                                                   {ServiceKind::relaxed, "relaxed"},
                                                   {ServiceKind::lightened, "lightened"},
                                                   {ServiceKind::home_colour, "home_colour"},
                                                   {ServiceKind::plant_colour, "plant_colour"},
                                                   {ServiceKind::minerals, "minerals"},
                                                   {ServiceKind::straightened_heat, "straightened_heat"},
                                                   {ServiceKind::straightened_unknown, "straightened_unknown"},
                                                   {ServiceKind::smoothed, "smoothed"},
                                                   {ServiceKind::plant_compound, "plant_compound"},
                                                   {ServiceKind::restorer, "restorer"},
                                                   {ServiceKind::coloured, "coloured"}}};
};

template <>
struct Words<AreaKind> {
  static constexpr std::string_view name = "AreaKind";
  static constexpr WordList<AreaKind, 7> list{{{AreaKind::front_hairline, "front_hairline"},
                                               {AreaKind::temples, "temples"},
                                               {AreaKind::top, "top"},
                                               {AreaKind::crown, "crown"},
                                               {AreaKind::sides, "sides"},
                                               {AreaKind::nape, "nape"},
                                               {AreaKind::other, "other"}}};
};

template <>
struct Words<Layers> {
  static constexpr std::string_view name = "Layers";
  static constexpr WordList<Layers, 3> list{{{Layers::none, "none"}, {Layers::some, "some"}, {Layers::many, "many"}}};
};

template <>
struct Words<Consistency> {
  static constexpr std::string_view name = "Consistency";
  static constexpr WordList<Consistency, 2> list{{{Consistency::cream, "cream"}, {Consistency::liquid, "liquid"}}};
};

template <>
struct Words<Texture> {
  static constexpr std::string_view name = "Texture";
  static constexpr WordList<Texture, 4> list{
      {{Texture::straight, "straight"}, {Texture::wavy, "wavy"}, {Texture::curly, "curly"}, {Texture::coily, "coily"}}};
};

template <>
struct Words<ProductClass> {
  static constexpr std::string_view name = "ProductClass";
  static constexpr WordList<ProductClass, 13> list{{{ProductClass::permanent, "permanent"},
                                                    {ProductClass::high_lift, "high_lift"},
                                                    {ProductClass::demi, "demi"},
                                                    {ProductClass::lightener, "lightener"},
                                                    {ProductClass::clear, "clear"},
                                                    {ProductClass::corrector, "corrector"},
                                                    {ProductClass::direct, "direct"},
                                                    {ProductClass::developer, "developer"},
                                                    {ProductClass::filler, "filler"},
                                                    {ProductClass::remover, "remover"},
                                                    {ProductClass::pre_treatment, "pre_treatment"},
                                                    {ProductClass::after_treatment, "after_treatment"},
                                                    {ProductClass::home_care, "home_care"}}};
};

template <>
struct Words<law::Status> {
  static constexpr std::string_view name = "LimitStatus";
  static constexpr WordList<law::Status, 5> list{{{law::Status::within, "within"},
                                                  {law::Status::over, "over"},
                                                  {law::Status::unknown_percentage, "unknown_percentage"},
                                                  {law::Status::not_permitted_use, "not_permitted_use"},
                                                  {law::Status::not_listed, "not_listed"}}};
};

template <>
struct Words<Light> {
  static constexpr std::string_view name = "Light";
  static constexpr WordList<Light, 4> list{
      {{Light::daylight, "daylight"}, {Light::lamp, "lamp"}, {Light::led, "led"}, {Light::fluorescent, "fluorescent"}}};
};

}  // namespace strandline::wire
