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

inline constexpr std::array<std::pair<TroubleKind, std::string_view>, 22> kTroubleWords{{
    {TroubleKind::refused, "refused"},
    {TroubleKind::moves_off, "moves-off"},
    {TroubleKind::stays_up, "stays-up"},
    {TroubleKind::not_tried, "not-tried"},
    {TroubleKind::gave_up, "gave-up"},
    {TroubleKind::stands_otherwise, "stands-otherwise"},
    {TroubleKind::hooks_off, "hooks-off"},
    {TroubleKind::roll_binds, "roll-binds"},
    {TroubleKind::roll_too_weak, "roll-too-weak"},
    {TroubleKind::roll_sticks, "roll-sticks"},
    {TroubleKind::roll_meets, "roll-meets"},
    {TroubleKind::roll_leaves_pipe, "roll-leaves-pipe"},
    {TroubleKind::roll_not_tried, "roll-not-tried"},
    {TroubleKind::touches, "touches"},
    {TroubleKind::zones, "zones"},
    {TroubleKind::overlaps, "overlaps"},
    {TroubleKind::at_half_step, "at-half-step"},
    {TroubleKind::stalls, "stalls"},
    {TroubleKind::hooks_lift, "hooks-lift"},
    {TroubleKind::slack, "slack"},
    {TroubleKind::swings_loose, "swings-loose"},
    {TroubleKind::lands_hard, "lands-hard"},
}};

}  // namespace stowpath
