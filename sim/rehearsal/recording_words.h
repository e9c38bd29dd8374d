#pragma once

#include <array>
#include <string_view>
#include <utility>

#include "sim/rehearsal/recording.h"

namespace stowpath {

/// The words of a recording's text, shared by its writer and its reader.
inline constexpr std::string_view kRecordingHead = "stowpath-recording";

inline constexpr std::array<std::pair<RecordedEventKind, std::string_view>, 27> kEventWords{{
    {RecordedEventKind::move_begins, "move-begins"},
    {RecordedEventKind::hooked_on, "hooked-on"},
    {RecordedEventKind::hooked_off, "hooked-off"},
    {RecordedEventKind::parked, "parked"},
    {RecordedEventKind::lowers_away, "lowers-away"},
    {RecordedEventKind::gives_up, "gives-up"},
    {RecordedEventKind::turns_over, "turns-over"},
    {RecordedEventKind::pinned, "pinned"},
    {RecordedEventKind::unpinned, "unpinned"},
    {RecordedEventKind::touch, "touch"},
    {RecordedEventKind::zone_entered, "zone-entered"},
    {RecordedEventKind::slack_begins, "slack-begins"},
    {RecordedEventKind::slack_ends, "slack-ends"},
    {RecordedEventKind::let_go, "let-go"},
    {RecordedEventKind::line_broken, "line-broken"},
    {RecordedEventKind::hooks_lift, "hooks-lift"},
    {RecordedEventKind::hooks_seat, "hooks-seat"},
    {RecordedEventKind::pushed, "pushed"},
    {RecordedEventKind::gust, "gust"},
    {RecordedEventKind::strays, "strays"},
    {RecordedEventKind::at_rest, "at-rest"},
    {RecordedEventKind::takes_hold, "takes-hold"},
    {RecordedEventKind::binds, "binds"},
    {RecordedEventKind::stays, "stays"},
    {RecordedEventKind::leaves_pipe, "leaves-pipe"},
    {RecordedEventKind::stands, "stands"},
    {RecordedEventKind::brought, "brought"},
}};

}  // namespace stowpath
