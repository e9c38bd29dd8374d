#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sim/geometry/interval.h"
#include "sim/geometry/vec2.h"

namespace stowpath {

/// A place in the user's file, both counted from 1; line 0 means "nowhere in the file".
struct SourcePos {
  int line = 0;
  int column = 0;  ///< in characters, not bytes
  int length = 1;  ///< characters to underline
};

/// How bare numbers of the file read, and how lengths are shown.
enum class FileUnits { millimetres, inches };

/// Clearance that each kind of pair needs [m].
struct Margins {
  double standard = 0.012;  ///< key `default`
  double hook = 0.003;      ///< hooks to what carries the rail
  double self = 0.003;      ///< one section to another
};

/// The room: its left side wall at station 0, back wall at out 0, floor at `Floor::level`.
struct Room {
  double length = 0.0;   ///< along the rail, side wall to side wall [m]
  double depth = 0.0;    ///< back wall to front wall [m]
  double ceiling = 0.0;  ///< height above the floor's zero [m]
};

struct LoftGuard {
  double height = 1.07;            ///< above the deck [m]
  double thickness = 0.04;         ///< out to in [m]
  double out = 0.0;                ///< its outer face [m]
  std::vector<Interval> openings;  ///< stations where there is none [m]
};

/// Which way framing members run.
enum class FramingDirection {
  out,        ///< from the back wall towards the front one, side by side along the rail
  along_rail  ///< along the rail, side by side from the back wall out
};

/// Joists that carry the deck or the ceiling, or trusses: what brackets and ceiling point hang from. Drawn nowhere.
struct Framing {
  std::string member;           ///< nominal lumber size, or "truss"
  std::optional<double> every;  ///< centre to centre; none: not said [m]
  std::string species;
  FramingDirection direction = FramingDirection::out;
  std::optional<double> first;  ///< middle of one of them: a station, or out from the back wall; none: not said [m]
};

struct Loft {
  double edge = 0.0;       ///< how far its front edge is from the back wall [m]
  double deck = 0.0;       ///< height of the surface walked on [m]
  double thickness = 0.0;  ///< deck and framing together [m]
  Interval stations;       ///< the span to be served [m]
  std::optional<LoftGuard> guard;
  std::optional<Framing> framing;
};

/// Screws that hold a piece of hardware in wood.
struct Screws {
  int count = 0;
  double diameter = 0.0;  ///< of the shank or, for lags, the thread [m]
  double thread = 0.0;    ///< length of thread in the wood that holds [m]
  bool lag = false;       ///< a lag screw (else a wood screw)
  std::string species;    ///< of the wood that holds; empty: the side rails'
};

struct Pipe {
  std::string name;       ///< "NPS 1", or empty where given by sizes
  double diameter = 0.0;  ///< outside [m]
  double wall = 0.0;      ///< [m]
  std::string steel = "A";
};

/// One piece of a bracket given by outline; its frame: out from the pipe's centre (towards the room), up from it.
struct BracketPiece {
  std::string name;           ///< "plate", "arm", ...
  std::vector<Vec2> corners;  ///< convex; one point and a radius is a disc, two a capsule [m]
  double radius = 0.0;        ///< [m]
  double width = 0.0;         ///< along the rail [m]
};

enum class BracketShape { wall_saddle, outline, strap, post_mounted };

/// Round screw heads that stand proud of a bracket.
struct ScrewHeads {
  double diameter = 0.0;   ///< [m]
  double height = 0.0;     ///< proud of what they hold [m]
  double apart = 0.0;      ///< two side by side, this far apart along the rail; 0: one in the middle [m]
  std::vector<double> at;  ///< on a plate: up from its middle, one row for each; none on a saddle [m]
};

/// Which way a strap's tab leaves the pipe.
enum class TabWay { up, wall };

/// An upright post that carries a bracket.
struct BracketPost {
  double depth = 0.0;   ///< out to in [m]
  double width = 0.0;   ///< along the rail [m]
  bool beside = false;  ///< on the wall side, with an arm to the saddle; else right under the saddle
  double above = 0.0;   ///< beside: it runs this far above the arm's centre line [m]
  double foot = 0.0;    ///< height at which it stands [m]
};

struct Brackets {
  std::vector<double> stations;  ///< centres, ascending [m]
  BracketShape shape = BracketShape::wall_saddle;
  double projection = 0.0;           ///< mounting face to the pipe's centre [m]
  double drop = 0.0;                 ///< pipe's centre down to the arm's centre line [m]
  double arm = 0.0;                  ///< diameter of the arm's rod [m]
  double saddle_length = 0.0;        ///< along the rail [m]
  double saddle_thickness = 0.0;     ///< [m]
  double plate_width = 0.0;          ///< along the rail [m]
  double plate_height = 0.0;         ///< [m]
  double plate_thickness = 0.0;      ///< [m]
  std::vector<BracketPiece> pieces;  ///< for BracketShape::outline
  std::optional<Screws> screws{};    ///< of each bracket
  double bend = 0.0;                 ///< inside radius of the arm's elbow; 0 for a sharp one [m]
  double flat = 0.0;                 ///< depth to which the pipe's underside is filed flat for the saddle [m]
  std::optional<ScrewHeads> plate_heads{};
  std::optional<ScrewHeads> saddle_heads{};
  double strap_width = 0.0;      ///< along the rail [m]
  double strap_thickness = 0.0;  ///< [m]
  double strap_arc = 0.0;        ///< of the pipe, from the tab over the wall side and under it [rad]
  TabWay tab = TabWay::up;
  std::optional<BracketPost> post{};  ///< for BracketShape::post_mounted
};

struct PipeJoint {
  double station = 0.0;   ///< [m]
  double diameter = 0.0;  ///< of the coupling; equal to the pipe's for a flush joint [m]
  double length = 0.0;    ///< of the coupling [m]
};

struct RailStops {
  bool left = false;
  bool right = false;
  double diameter = 0.0;  ///< of the collar [m]
  double width = 0.0;     ///< along the rail [m]
};

struct Rail {
  Pipe pipe;
  Vec2 at;            ///< the pipe's centre: out, up [m]
  Interval stations;  ///< its two ends [m]
  RailStops stops;
  std::vector<PipeJoint> joints;
  Brackets brackets;
};

struct SideRails {
  std::string lumber;      ///< nominal size, empty where given by sizes
  double thickness = 0.0;  ///< along the rail [m]
  double width = 0.0;      ///< across [m]
  std::string species;
  double front_face = 0.0;  ///< across, from the datum line to the climber's face [m]
  bool level_foot = false;  ///< foot cut level in the working pose (else square)
  double moisture = 0.12;   ///< of all the stair's wood, share of its oven-dry weight
};

enum class HingeFace { back, front };

struct Hinge {
  HingeFace face = HingeFace::back;
  double offset = 0.0;             ///< the pin's axis stands this far off that face [m]
  double limit = 0.0;              ///< greatest fold [rad]
  std::optional<Screws> screws{};  ///< of each leaf
  double leaf = 0.075;             ///< length of each leaf along its section, from the joint [m]
  double leaf_thickness = 0.003;   ///< of a leaf that lies on the face; one thicker than the offset is let in [m]
};

/// Scab boards that bridge a joint, and the pin that locks it.
struct Lock {
  std::string lumber;      ///< nominal size of the scab
  double thickness = 0.0;  ///< along the rail [m]
  double width = 0.0;      ///< across [m]
  double length = 0.0;     ///< along, half on each side of the joint [m]
  double spacer = 0.0;     ///< block between side rail and scab, along the rail; 0 for none [m]
  double pin = 0.0;        ///< diameter [m]
  double head = 0.0;       ///< diameter of the pin's head, and of what keeps its other end [m]
  double head_height = 0.0;  ///< how far each stands out along the rail [m]
  std::optional<Screws> screws{};  ///< that fix one scab to its upper section's side rail
  bool slotted = false;  ///< the pin's hole is long: it locks the joint and takes no part in what the ends carry by butting
};

struct Treads {
  std::string lumber;
  double thickness = 0.0;       ///< [m]
  double depth = 0.0;           ///< front to back [m]
  std::optional<double> rise;   ///< none: equal rises from floor to deck [m]
  std::optional<double> first;  ///< height of the lowest tread above the floor; none: one rise [m]
  double overhang = 0.0;        ///< front edge beyond the side rails' front face, square to it [m]
  std::optional<Screws> screws{};  ///< through a side rail into one end of a tread, or of the cleat under it
  bool cleats = false;             ///< the screws hold a cleat under the tread, so that they are in side grain
};

enum class Sides { both, left, right };

struct Handrails {
  double height = 0.0;    ///< bar's axis above the side rails' front face, square to it [m]
  double diameter = 0.0;  ///< [m]
  Sides sides = Sides::both;
  double post_every = 0.0;  ///< along [m]
};

enum class HookForm { rod, plate };
enum class HookEnd { square, pointed };

/// One piece of a plate hook, in section 1's frame.
struct HookPiece {
  std::string name;           ///< "shank", "curl", ...
  std::vector<Vec2> corners;  ///< along, across; convex; one point and a radius is a disc, two a capsule [m]
  double radius = 0.0;        ///< [m]
};

/// A wheel in a hook that rolls along the pipe; its tread touches the hook's circle.
struct HookRoller {
  double diameter = 0.0;  ///< [m]
  double width = 0.0;     ///< of the tread, along its axle, which lies in the side view [m]
  double at = 0.0;        ///< its place on the bend, from the shank [rad]
};

struct Hooks {
  std::vector<double> stations;    ///< centres, from the stair's middle [m]
  double rod = 0.0;                ///< diameter [m]
  double inside = 0.0;             ///< inside radius of the bend [m]
  double shank = 0.0;              ///< straight length from the bend along the section [m]
  double wrap = 0.0;               ///< arc covered, from the shank over the pipe's top to the curl's end [rad]
  double tip = 0.0;                ///< straight length past the arc [m]
  double seat_range = 0.0;         ///< how far the contact may wander each way from the crown [rad]
  std::optional<Screws> screws{};  ///< of each hook's shank
  HookForm form = HookForm::rod;
  HookEnd end = HookEnd::square;
  double shank_offset = 0.0;        ///< the shank stands this far off the bend's tangent, to the climber's side [m]
  double rim = 0.0;                 ///< a plate's metal behind the bearing arc, square to it [m]
  double thickness = 0.0;           ///< of a plate, along the rail [m]
  std::vector<HookPiece> pieces{};  ///< of a plate, beyond its rim
  std::optional<HookRoller> roller{};

  /// Of the rod or the plate, along the rail [m].
  double width() const { return form == HookForm::rod ? rod : thickness; }
  /// Of the rod or the rim, square to the bearing face [m].
  double depth() const { return form == HookForm::rod ? rod : rim; }
};

struct Casters {
  double diameter = 0.0;         ///< [m]
  double width = 0.0;            ///< of a wheel's tread, along its axle [m]
  double along = 0.0;            ///< axle, on the last section [m]
  double across = 0.0;           ///< axle [m]
  std::vector<double> stations;  ///< centres, from the stair's middle [m]
  double plate = 0.0;            ///< thickness of the mounting plate on the side rail; 0 for none [m]
  double block = 0.0;            ///< thickness of the packing block between rail and plate; 0 for none [m]
  double mass = 0.0;             ///< each [kg]
  bool swivels = false;          ///< on a swivel, so that a wheel may point any way; else it rolls along the rail
  double trail = 0.0;            ///< of a swivel: its axle runs this far off the upright axis [m]
};

struct Extra {
  std::string name;
  int section = 1;
  std::vector<Vec2> outline;  ///< along, across on its section; counter-clockwise [m]
  double radius = 0.0;        ///< grown outward from the outline [m]
  Interval stations;          ///< from the stair's middle [m]
  double mass = 0.0;          ///< [kg]
};

struct Stair {
  double width = 0.0;  ///< over the side rails [m]
  SideRails side_rails;
  std::vector<double> sections;  ///< lengths along: pivot to hinge, hinge to hinge, hinge to foot [m]
  double above_pivot = 0.0;      ///< side rails run this far past the pivot; negative: they stop short of it [m]
  std::vector<Hinge> hinges;     ///< one less than sections
  std::vector<Lock> locks;       ///< none, or one a hinge
  std::optional<Treads> treads;
  Hooks hooks;
  Casters casters;
  std::optional<Handrails> handrails;
  std::vector<Extra> extras;
  std::vector<std::optional<double>> weighed{};  ///< by section: its mass on a scale, in place of the computed one [kg]
};

/// A fixed thing of the room.
struct Obstacle {
  std::string name;
  std::vector<Vec2> outline;         ///< out, up; convex, counter-clockwise [m]
  double radius = 0.0;               ///< grown outward [m]
  Interval stations;                 ///< [m]
  std::optional<double> round_post;  ///< diameter of a round upright post; outline and stations are then its box [m]
};

struct Floor {
  double level = 0.0;   ///< [m]
  double uneven = 0.0;  ///< plus or minus, under any caster [m]
};

enum class ZoneState { always, standing, moving, parked };

struct Zone {
  std::string name;
  std::vector<ZoneState> when;
  std::vector<Vec2> outline;  ///< out, up; convex, counter-clockwise [m]
  Interval stations;          ///< [m]
};

/// A point of the room.
struct RoomPoint {
  Vec2 at;               ///< out, up [m]
  double station = 0.0;  ///< [m]
};

/// A point of a section.
struct SectionPoint {
  int section = 1;      ///< counted from 1
  double along = 0.0;   ///< [m]
  double across = 0.0;  ///< [m]
};

enum class SheaveKind { plain, roller, ball };

/// How friction at the sheaves is reckoned: three published models that disagree, kept apart.
enum class SheaveFriction { geometric, additive, ideal };

/// The two blocks of a tackle.
struct Blocks {
  double length = 0.0;  ///< from what holds one to where its sheaves end [m]
  double width = 0.0;   ///< over its cheeks; the parts of line between the blocks run no wider apart [m]
};

struct HoistLine {
  int parts = 1;
  SheaveKind sheaves = SheaveKind::plain;
  double diameter = 0.0;           ///< [m]
  std::optional<double> strength;  ///< breaking [N]
  std::vector<RoomPoint> leads{};  ///< lead sheaves from the ceiling point to the hand, in order
  SheaveFriction friction = SheaveFriction::geometric;
  double tail = 1.0;             ///< spare at the hand with everything down [m]
  std::string knot = "bowline";  ///< at the dead end
  std::optional<Blocks> blocks{};      ///< of two or more parts; one part has none
  std::optional<RoomPoint> hand{};     ///< where it is pulled, or the winch's drum; none: straight below the last lead
  std::optional<double> hangs_to{};    ///< height down to which it hangs while it is not hooked on; none: to the pick
};

enum class PulledBy { hand, crank_winch, powered_winch };

/// What turns the line; read for the loads.
struct Winch {
  double drum = 0.0;  ///< diameter [m]
  double ratio = 1.0;
  std::optional<double> crank;          ///< radius [m]
  std::optional<double> efficiency;     ///< 0 to 1
  std::optional<double> speed;          ///< turns a minute at the input
  std::optional<double> torque{};       ///< that the drive gives at that speed [N m]
  std::optional<double> stall{};        ///< pull on the line at which the drive stops, nothing on the drum but its first layer [N]
  std::optional<double> drum_length{};  ///< between flanges, for layers [m]
  std::optional<double> worm_lead{};    ///< lead angle of a worm; none: no worm [rad]
  double worm_friction = 0.1;
};

/// A bar that parts the line to two picks.
struct Spreader {
  double length = 0.0;  ///< between its ends [m]
  double drop = 0.0;    ///< height of the bar's middle over the picks [m]
  double mass = 0.0;    ///< [kg]
  double thickness = 0.04;  ///< of the bar, all round [m]
};

/// What a pull aslant leaves of an eye's rating.
enum class EyeKind {
  plain,     ///< nothing that any table gives
  shoulder,  ///< a share, by the angle
  swivel     ///< all: it turns to face the pull
};

/// Which way an eye's shank points.
enum class EyeAxis { plumb, out, along_rail };

struct Hoist {
  std::optional<RoomPoint> ceiling_point;
  std::optional<double> home;  ///< station [m]
  bool rolls = false;
  SectionPoint pick;
  double spread = 0.0;  ///< between the two picks, along the rail; 0 for one [m]
  HoistLine line;
  std::optional<Spreader> spreader{};
  PulledBy pulled_by = PulledBy::hand;
  std::optional<Winch> winch;
  std::optional<double> hand_limit{};  ///< the user's own limit of pull [N]
  bool cleat = false;                  ///< the fall can be made fast
  std::optional<Screws> eye{};         ///< a screw eye or lag that holds the ceiling point; none: not said
  int eye_members = 1;                 ///< framing members that share the ceiling point's load
  EyeKind eye_kind = EyeKind::plain;   ///< of the ceiling point
  EyeAxis eye_axis = EyeAxis::plumb;   ///< of the ceiling point
  EyeKind pick_kind = EyeKind::plain;  ///< of the eyes at the pick
  std::optional<double> overload{};    ///< pull on the line at which a clutch slips or a shear pin breaks [N]
};

struct FoldLine {
  SectionPoint from;
  std::vector<SectionPoint> through;
  double diameter = 0.0;  ///< [m]
  double station = 0.0;   ///< from the stair's middle [m]
  std::optional<double> strength{};  ///< breaking [N]
};

enum class StepKind { roll, lift, fold, together, drag, hang, pin, unpin, hook_on, hook_off };

/// One entry of the procedure, targets absolute.
struct Step {
  StepKind kind = StepKind::lift;
  std::optional<double> station;             ///< roll, together [m]
  bool to_home = false;                      ///< roll: home
  std::optional<double> lean;                ///< lift, together, drag, hang [rad]
  std::vector<std::optional<double>> folds;  ///< fold, together: by hinge, none where it stays [rad]
  int hinge = 0;                             ///< pin, unpin: counted from 1
  SourcePos at;
};

/// Ranges of friction coefficients: results are swept over them, never tuned to one.
struct Frictions {
  Interval hook{0.15, 0.5};  ///< hook on pipe
  Interval hinge{0.1, 0.3};  ///< pin in hinge
  Interval floor{0.3, 0.7};  ///< a caster scrubbing sideways
};

/// A rating that the maker gives for a piece of hardware.
struct Rating {
  std::string what;         ///< "carabiner", "ceiling point", "block", ...
  double force = 0.0;       ///< as stated: a working load limit, or what breaks it [N]
  bool breaking = false;    ///< it is what breaks it
  std::optional<double> factor{};  ///< what breaks it over what it may carry; none: not said
};

/// Who climbs, and how.
struct Climber {
  double mass = 136.077711;  ///< with what is carried; 300 lb, the concentrated stair load of IRC Table R301.5 [kg]
  double usual = 90.718474;  ///< with what is carried on a usual day; 200 lb [kg]
  double footfall = 1.5;     ///< how many times the usual weight a step puts on a tread
  double aside = 0.150;      ///< how far from the stair's middle a foot may stand [m]
  double leans_out = 0.300;  ///< how far the body may be beyond the tread [m]
  double push = 266.893296;  ///< level, when stepping off at the top; 60 lbf [N]
};

/// Everything one scene file says, in SI and radians, checked key by key but not yet assembled.
struct Scene {
  std::string file;  ///< the file's name, for messages
  std::string name;
  FileUnits units = FileUnits::millimetres;
  Margins margin;
  Room room;
  Loft loft;
  Rail rail;
  Stair stair;
  std::vector<Obstacle> obstacles;
  Floor floor;
  std::vector<Zone> zones;
  std::optional<Hoist> hoist;
  std::optional<FoldLine> fold_line;
  std::vector<Step> procedure;
  Climber climber;
  Frictions friction;
  std::vector<Rating> ratings;
  std::optional<Framing> ceiling_framing{};  ///< what the ceiling point hangs from
  double dynamic_factor = 1.25;  ///< on loads of the line while it moves; judgement, for the user to set
  double home_within = 0.010;    ///< how near to its mark the stair stands, either way along the rail [m]
  double tolerance = 0.003;      ///< how far any measurement may be off [m]
  std::map<std::string, SourcePos>
      where;  ///< key path ("stair.hooks.wrap", "obstacles[2].box") to its place in the file
};

/// Where a setting stands, or else the nearest one above it that is given: for faults that show only once the stair is
/// put together.
SourcePos place_of(const Scene& scene, const std::string& key);

}  // namespace stowpath
