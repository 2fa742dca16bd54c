# The words of the studio in English, which all other languages follow: a message that another
# file lacks is said as here. The format is Project Fluent's (projectfluent.org): `{ $name }` is
# put in, `{ $n -> [one] … *[other] … }` chooses by number. Names of arguments and keys stay.

## Commands: their names, and a sentence on each

command-new = New…
command-open = Open…
command-save = Save
command-save-as = Save as…
command-undo = Undo
command-redo = Redo
command-light-or-dark = Light or dark
command-shape = Shape
command-assembly = Assembly
command-sizes = Sizes
command-sheet = Sheet
command-proofread = Proofread
command-open-pattern = Open pattern…
command-paste = Paste
command-copy-the-text = Copy the text
command-save-the-text = Save the text…
command-make-a-piece-of-it = Make a piece of it
command-copy = Copy
command-copy-the-spoken-script = Copy the spoken script
command-copy-the-shop-text = Copy the shop text
command-export-picture = Export the picture…
command-export-turning = Export it turning…
command-previous-round = Previous round
command-next-round = Next round
command-first-round = First round
command-last-round = Last round
command-deselect = Deselect
command-copy-line = Copy line
command-pin = Pin
command-one-stitch-more = One stitch more
command-one-stitch-fewer = One stitch fewer
command-previous-knot = Previous knot
command-next-knot = Next knot
command-remove-knot = Remove knot
command-corner = Corner
command-next-stitch = Next stitch
command-next-loop = Next loop
command-plain = Plain
command-fit-view = Fit view
command-magnet = Magnet
command-picture = Picture…
command-trace = Trace…
command-lesson = Lesson
command-previous-step = Previous step
command-next-step = Next step
command-hide-numbers = Hide numbers
command-present = Present
command-stop-or-continue = Stop or continue
command-print-this-step = Print this step…
command-print-every-step-for-a-class = Print every step for a class…
command-make-a-project-of-the-lesson = Make a project of the lesson
command-open-a-course = Open a course…
command-save-the-course-to-change-it = Save the course to change it…
command-make = Make
command-settings = Settings…
command-keys = Keys…
command-larger-text = Larger text
command-smaller-text = Smaller text
command-usual-text = Usual text
command-new-does = Start a piece from a shape, or open a project
command-open-does = Open a project file
command-save-does = Save the project
command-save-as-does = Save the project under another name
command-undo-does = Undo the last step
command-redo-does = Redo the step that was undone
command-theme-does = Change between light and dark
command-shape-does = Shape the piece
command-assembly-does = Put the pieces together, see how the toy stands and hangs
command-sizes-does = Make the piece in other sizes, match a seam, measure a sample
command-sheet-does = Read the pattern
command-proofread-does = Check a written pattern, yours or another’s
command-open-pattern-does = Open a written pattern: text, a web page, a document (.rtf, .docx) or a PDF
command-paste-pattern-does = Paste a written pattern from the clipboard
command-copy-pattern-does = Copy the written pattern as it is now, fixes included
command-save-pattern-does = Save the written pattern as it is now in a text file
command-make-piece-does = Add a piece with these counts, at the gauge of the selected piece
command-copy-sheet-does = Copy the whole pattern as plain text
command-copy-script-does = Copy the pattern as sentences to say, with the time of each
command-copy-blurb-does = Copy size, level, materials and what is included, for a shop
command-save-sheet-does = Save the sheet as .pdf, .html, .md or .txt, a page as .png, or captions as .srt or .vtt
command-save-body-does = Save the body as it is turned now, as a picture with a clear background
command-save-turning-does = Save the body turning once around, as an animated picture
command-previous-round-does = Select the round before
command-next-round-does = Select the next round
command-first-round-does = Select the first round
command-last-round-does = Select the last round
command-deselect-does = Deselect the round, the knot or the part
command-copy-round-does = Copy the line of the selected round as plain text
command-pin-does = Pin this round’s stitch count, or unpin it
command-more-stitches-does = Pin the selected round at one stitch more
command-fewer-stitches-does = Pin the selected round at one stitch fewer
command-previous-knot-does = Select the knot before
command-next-knot-does = Select the next knot
command-remove-knot-does = Remove the selected knot; on the toy, the part
command-corner-does = Let the outline turn sharply at this knot, or not
command-next-kind-does = Work in the next kind of stitch from the selected round on
command-next-loop-does = Work the selected round into both loops, the front or the back
command-plain-does = Keep the selected round plain, or let it be shaped
command-fit-does = Show the whole piece on the board
command-magnet-does = Knots snap to the axis, to one another and to whole mm or sixteenths of an inch; Alt suspends it
command-trace-does = Find the outline in the picture; you look at it before it is used
command-picture-does = Choose a picture to trace: PNG, JPEG or WebP
command-lesson-does = See and teach why an increase bends fabric
command-lesson-back-does = Go to the step of the lesson before this one
command-lesson-next-does = Go to the next step of the lesson, after the last to your own piece
command-lesson-numbers-does = Hide the numbers of what is taught, so that learners work them out, or show them
command-lesson-present-does = Fill the window in large type, for a projector; Esc ends it
command-lesson-stop-does = Stop the fabric where it is, or let it settle further
command-print-step-does = Save a page to work on with its answer on the back, and a page for the teacher, as a PDF
command-print-lesson-does = Save the pages of all steps, and the teacher’s guide, as one PDF
command-lesson-project-does = Start a project with a piece for each step, in your own stitches
command-open-course-does = Teach from a file of your own, written like the built-in one
command-save-course-does = Save the built-in course as a file, to write your own
command-make-does = Work the piece stitch by stitch
command-settings-does = Language, theme, units, text size, keys and the side of the board
command-keys-does = Every command with its key; type to search
command-larger-does = Make everything on screen one step larger
command-smaller-does = Make everything on screen one step smaller
command-usual-does = Back to the usual size of text

## Commands of the Make stage

making-stitch = Stitch
making-repeat = Repeat
making-round = Round
making-back = Back
making-done = Done
making-other-piece = Other piece
making-other-size = Other size
making-go-to = Go to…
making-note = Note
making-stitch-does = Count one stitch: a plain one, an increase or a decrease
making-repeat-does = Count the repeat to its end
making-round-does = Count the round to its end
making-back-does = Undo the last step
making-done-does = This is done; continue
making-other-does = Go to the next copy or piece that is not made yet
making-size-does = Go to the next size, or back to the sizes as designed
making-find-does = Continue from the start of another round
making-note-does = Write a note on this round

## Groups of commands

group-project = Project
group-stages = Stages
group-rounds = Rounds
group-outline-board = Outline board
group-pattern = Pattern
group-lesson = Lesson
group-make = Make
group-studio = Studio

## Names of keys

key-up = Up
key-down = Down
key-esc = Esc
key-del = Del
key-ctrl = Ctrl+
key-alt = Alt+
key-shift = Shift+
key-either = { $first } or { $second }

## What key commands say on the toy

told-in-round = Rnd { $round }
told-after-round = after Rnd { $round }
told-front-line = on its front line
told-from-front = { $n ->
        [one] 1 stitch
       *[other] { $n } stitches
    } from the front
told-removed-called-and-what-it-carries = Removed { $called } and what it carries.
told-removed-what-holds-it = Removed what holds it.

## Names that many places use

yarn-letter = Yarn { $letter }

## Controls of cards

form-what-percent-done = { $what }, { $percent } % done
form-name-fewer = { $name }, fewer
form-name-more = { $name }, more
form-back-to-word = Back to { $word }

## Cards over the window

over-close-the-card = Close the card
over-back = Close (Esc)
yarn-yarn-name = Yarn name
yarn-how-pictures-show-this-yarn-no-count = How pictures show this yarn; no count changes
yarn-runs = Length
yarn-per-100g = m per 100 g
yarn-from-round-round-on = From round { $round } on
yarn-another-yarn = Another yarn
yarn-no-change-of-yarn-here = No change of yarn here
yarn-face = { $face } yarn

## What a person writes on the sheet

entry-designer = Designer
entry-version = Version
entry-license-line = License line
entry-notes = Notes
entry-assembly = Assembly notes
entry-your-name = your name
entry-2-28-november-2026 = 2, 28 November 2026
entry-for-your-own-use-do-not-resell-the = for your own use; do not resell the pattern
entry-what-it-is-for-how-it-came-to-be = what it is for, how it came to be
entry-what-is-sewn-where-one-paragraph-for = what is sewn where, one paragraph for each step

## New projects

new-new-project = New project

## Steps of undo

step-change = Change

## Why a measure is missed

measure-stays = It stays { $got }: a piece given by its rounds has the size they make. Plan it again to make it { $asked }.
measure-asked-cannot-be-planned-give-least-to = { $asked } cannot be planned: give { $least } to { $most }.
measure-a-round-is-height-high-and-whole = a round is { $height } high, and whole rounds come no nearer
measure-six-stitches-are-width-across-and = six stitches are { $width } across, and counts in even repeats come no nearer
measure-asked-comes-to-got-why = { $asked } comes to { $got }: { $why }.
step-name-the-project = Name the project
step-drag-knot-knot = Drag knot { $knot }
step-move-knot-knot = Move knot { $knot }
step-add-knot-knot = Add knot { $knot }
step-remove-knot-knot = Remove knot { $knot }
step-make-knot-knot-sharp-or-smooth = Make knot { $knot } sharp or smooth
step-open-or-close-the-start = Open or close the start
step-open-or-close-the-end = Open or close the end
step-pin-at = Pin round { $round } at { $count }
step-pin-round-round = Pin round { $round }
step-unpin-round-round = Unpin round { $round }
step-gauge = Gauge
step-stuff-it = Stuff it { $how }
step-firmness = Firmness
step-default-simplicity = Default simplicity
step-simplicity = Simplicity
step-choose-a-result = Choose a result
step-yarn-letter-from-round-round = Yarn { $letter } from round { $round }
step-paint-stitches = Paint stitches
step-take-paint-off = Take paint off
step-paint-round-in-yarn = Paint round { $round } in yarn { $letter }
step-take-paint-off-round = Take paint off round { $round }
step-new-yarn-from-round-round = New yarn from round { $round }
step-no-change-of-yarn-at-round-round = No change of yarn at round { $round }
step-shape-the-outline = Shape the outline
step-picture-to-trace = Picture to trace
step-remove-the-picture = Remove the picture
step-height-length = Height { $length }
step-width-length = Width { $length }
step-neck-length = Neck { $length }
step-scale-the-picture = Scale the picture
step-make-a-piece-from-a-pattern = Make a piece from a pattern
step-make-pieces-from-a-pattern = Make pieces from a pattern
step-entry-on-the-sheet = { $entry } on the sheet
step-arrange-the-sheet = Arrange the sheet
step-words-of-the-pattern = Words of the pattern
step-add-a-size = Add a size
step-add-the-size-name = Add the size { $name }
step-remove-a-size = Remove a size
step-size-name = Size { $name }
step-make-the-piece-another-size = Make the piece another size
step-add-a-seam = Add a seam
step-remove-seam-number = Remove seam { $number }
step-seam-number = Seam { $number }
step-match-seam-number = Match seam { $number }
step-another-yarn = Another yarn
step-use-the-measured-sample = Use the measured sample
step-move-the-piece-in-the-list = Move the piece in the list
step-duplicate-the-piece = Duplicate the piece
step-remove-the-piece = Remove the piece
step-name-the-piece = Name the piece
step-how-many-n = How many: { $n }
step-rules = Rules
step-stack-increases = Stack increases
step-spread-increases = Spread increases
step-plain-rounds = Plain rounds
step-one-round = round { $round }
step-rounds = rounds { $from }–{ $to }
step-plain = Keep { $rounds } plain
step-shaped = Let { $rounds } be shaped
step-straight-part-length = Straight part { $length }
step-work-from-the-other-end = Work from the other end
step-free-knot-knot = Free knot { $knot }
step-hold-knot-knot = Hold knot { $knot }
step-card-after-knot-knot = Card after knot { $knot }
step-no-card-after-knot-knot = No card after knot { $knot }
step-kind = { $kind } from round { $round }
step-loops-of-round-round = Loops of round { $round }
step-swatches-in-other-stitches = Swatches in other stitches
step-spiral-or-joined = Spiral or joined
step-hook-hand = Hook hand
step-stuffing-grams-per-liter = Stuffing, grams per liter

## Steps of undo on the toy

toy-step-move-called = Move { $called }
toy-step-what-called-sits-on = What { $called } sits on
toy-step-edge-of-called = Edge of { $called }
toy-step-turn-called = Turn { $called }
toy-step-tilt-called = Tilt { $called }
toy-step-how-deep-called-is-sunk-in = How deep { $called } is sunk in
toy-step-how-many-of-called = How many of { $called }
toy-step-what-holds-called = What holds { $called }
toy-step-stuffing-of-called = Stuffing of { $called }
toy-step-front-of-called = Front of { $called }
toy-step-what-of-called-is-up = What of { $called } is up
toy-step-size-of-called = Size of { $called }
toy-step-put-down-called = Put down { $called }
toy-step-add-called = Add { $called }
toy-step-remove-called = Remove { $called }
toy-step-each-called-its-own-place = Each { $called } its own place
toy-step-who-it-is-made-for = Who it is made for
toy-step-attach = Add a { $what }
toy-step-change-the-what = Change the { $what }
toy-step-remove-what-holds-it = Remove what holds it
toy-step-cord = cord
toy-step-loop = loop
toy-step-wire = wire
toy-step-joint = joint
toy-step-embroidery = Embroidery
toy-step-sling = set of cords

## Charts of the lesson

chart-increases = Increases
chart-angles = Angles

## Stages, and what the board and the card show

stage-shape = Shape
stage-assembly = Assembly
stage-sizes = Sizes
stage-sheet = Sheet
stage-lesson = Lesson
stage-proofread = Proofread
stage-make = Make
board-outline = Outline
board-body = Body
board-show-outline = Show the outline
board-show-body = Show the body
card-figures = Facts
card-checks = Checks
card-rules = Rules
card-simplicity = Simplicity

## What the sheet is shown as

sheet-as-pages = Pages
sheet-as-text = Text

## What stands beside the sizes

aside-seams = Seams
aside-another-yarn = Another yarn
aside-sample = Sample
aside-match = Match
aside-toy = Toy

## Sides that the toy is looked at from

look-from-front = Front
look-from-side = Side
look-from-back = Back
look-from-free = Free

## What a mark on the picture says

mark-rectangle = rectangle
mark-on-it = on it
mark-beside-it = beside it

## Names of kinds

starter-ball = Ball
starter-egg = Egg
starter-drop = Drop
starter-cone = Cone
starter-dome = Dome
starter-bean = Bean
starter-dish = Dish
starter-float = Float
starter-ball-about = Round all over
starter-egg-about = Narrower at its start
starter-drop-about = A pointed tip, a round foot
starter-cone-about = A pointed tip, an open edge
starter-dome-about = Stands on a flat base with a card
starter-bean-about = An oval, started on a chain
starter-dish-about = From its middle to an open rim
starter-float-about = A body, a neck and an open lip
starter-add-ball = Add a ball
starter-add-egg = Add an egg
starter-add-drop = Add a drop
starter-add-cone = Add a cone
starter-add-dome = Add a dome
starter-add-bean = Add a bean
starter-add-dish = Add a dish
starter-add-float = Add a float
starter-create-ball = Create ball
starter-create-egg = Create egg
starter-create-drop = Create drop
starter-create-cone = Create cone
starter-create-dome = Create dome
starter-create-bean = Create bean
starter-create-dish = Create dish
starter-create-float = Create float
firmness-soft = soft
firmness-medium = medium
firmness-firm = firm
kind-single = Single crochet
kind-half-double = Half double crochet
kind-double = Double crochet
yarn-smooth = Smooth
yarn-wool = Wool
yarn-chenille = Chenille

## Colours of yarn

colour-madder = Madder
colour-brick = Brick
colour-rosehip = Rosehip
colour-foxglove = Foxglove
colour-plum = Plum
colour-iris = Iris
colour-dusk = Dusk
colour-slate = Slate
colour-lagoon = Lagoon
colour-spruce = Spruce
colour-fern = Fern
colour-pistachio = Pistachio
colour-quince = Quince
colour-mustard = Mustard
colour-apricot = Apricot
colour-blush = Blush
colour-oat = Oat
colour-milk = Milk
colour-sand = Sand
colour-hazel = Hazel
colour-peat = Peat
colour-char = Char
colour-ash = Ash
colour-sky = Sky

## First steps, and what a crash left

foot-a-moment-ago = a moment ago
foot-open-the-last-saved = Open the last saved
foot-discard = Discard
foot-offer-it-again-at-the-next-start = Offer it again at the next start
foot-put-away = Close this; it is offered again at the next start
foot-recover = Recover
foot-crash-saved = Plumpline closed unexpectedly. Recover “{ $title }” as it was { $age }, or open the last saved?
foot-crash-unsaved = Plumpline closed unexpectedly. Recover “{ $title }” as it was { $age }? It was never saved.
foot-first-steps = First steps
foot-close-first-steps = Close first steps
foot-close-the-first-steps-for-good = Close the first steps for good
foot-done = done
foot-to-do = to do
foot-first-step-number-state-words = First step { $number }, { $state }: { $words }

## The keys card

keys-title = Keys
keys-hint = every command; click one to do it
keys-move-knots = Move the selected knots
keys-move-knots-how = arrows; with Shift ten times as far
keys-several-knots = Select several knots
keys-several-knots-how = Shift and click, or drag a frame around them
keys-no-magnet = Suspend the magnet
keys-no-magnet-how = Alt while dragging
keys-move-board = Move the board
keys-move-board-how = Space or the middle button, and drag
keys-zoom = Zoom the board or the body
keys-zoom-how = wheel
keys-turn-body = Turn the body
keys-turn-body-how = Left, Right; tilt it with Shift and Up, Down
keys-move-part = Move the selected part
keys-move-part-how = arrows; with Shift five times as far; Del removes it
keys-next-control = Go to the next control
keys-next-control-how = Tab; back with Shift and Tab
keys-close = Close a card or a menu
keys-close-how = Esc
keys-type-a-word-or-a-key = Type a word or a key
keys-search-the-keys = Search the keys
keys-with-the-hand = With the hand
keys-no-match = No match.
keys-command-not-now = { $command } (not now)

## Notices

notice-stop = Stop
notice-undo-what = Undo: { $what }
notice-dismiss = Dismiss

## The pieces menu

pieces-piece-selected = { $piece }, selected
pieces-rename-copy-or-remove-this-piece-or = Rename, copy or remove this piece, or add another
pieces-named = Piece { $name }
pieces-piece-name-place-of-many = Piece { $name }, { $place } of { $many }
pieces-piece = Piece
pieces-name-of-the-piece = Name of the piece
pieces-how-many-are-made-of-it-yarn-stuffing = How many are made of it; yarn, stuffing and time on the sheet are for all
pieces-how-many = How many
pieces-duplicate = Duplicate
pieces-remove = Remove
pieces-earlier = Earlier
pieces-later = Later
pieces-add-a-piece = Add a piece
pieces-pieces = Pieces

## Projects worked on before

recent-recent-projects = Recent projects
recent-remove-stem-from-the-list = Remove { $stem } from the list
recent-open = Open { $stem }
recent-no-longer-there = no longer there
recent-gone = It is no longer there; click to remove it from the list

## The settings card

settings-title = Settings
settings-hint = for every project on this computer
settings-look = Look
settings-language = Language
settings-language-why = Of menus and cards; a pattern has its own, on the sheet
settings-cards-menus-and-lists-come-and-go-at = Cards, menus and lists come and go at once
settings-reduce-motion = Reduce motion
settings-units-and-terms = Units and terms
settings-hands = Hands
settings-on-the-right-for-a-left-hand-so-that = On the right for a left hand, so that it does not cover the work
settings-side-of-the-board = Side of the board
settings-left = left
settings-right = right
settings-letters-digits-and-signs-are-shortcuts = Letters, digits and signs are shortcuts by themselves; if off, press Alt with them
settings-single-keys = Single keys
settings-light-like-drafting-paper-dark-like-a = Light like drafting paper, dark like a cutting mat
settings-theme = Theme
settings-light = light
settings-dark = dark
settings-as-the-system = as the system
settings-text-size = Text size
settings-of-everything-on-screen = Of everything on screen
settings-of-every-length-on-screen-you-can-type = Of every length on screen; you can type any unit. Files hold millimeters
settings-lengths = Lengths
settings-lengths-in = Lengths in
settings-cm = cm
settings-mm = mm
settings-inches = inches
settings-of-this-pattern-other-languages-and = Of this pattern; other languages and house styles are on the sheet
settings-crochet-terms = Crochet terms
settings-us = US
settings-uk = UK

## The start card

start-makes = { $rounds ->
        [one] 1 round
       *[other] { $rounds } rounds
    } of { $widest ->
        [one] 1 stitch
       *[other] { $widest } stitches
    } at most, at this gauge
start-or-drop-it-on-the-window = or drop it on the window
start-its-profile-is-shown-here = its profile is shown here
start-trace-it = Trace it…
start-create-the-piece = Create the piece
start-create = Create
start-start-with-this-piece-ctrl-enter = Start with this piece (Ctrl+Enter)
start-formula = Formula
start-a-radius-for-every-height = A radius for every height
start-from-a-file = From a file
start-you-see-it-before-it-is-used = You see it before it is used
start-height = Height
start-along-the-axis = Along the axis
start-the-short-way-across = The short way across
start-across-the-axis-at-the-widest = Across the axis, at the widest
start-width = Width
start-neck = Neck
start-across-the-neck-at-its-narrowest = Across the neck, at its narrowest
start-length = Length
start-the-long-way-across = The long way across
start-of-the-superellipse-2-is-half-a-ball = Of the superellipse: 2 is half a ball or an ellipse, more is boxier, 1 is a cone
start-exponent = Exponent
start-radius-in-mm-by-z-height-mm-t-0-to-1 = Radius in mm by z (height, mm), t (0 to 1) or h
start-of-the-whole-along-the-axis-h = Of the whole along the axis: h
start-a-photo-or-a-drawing-of-a-thing-seen = A photo or a drawing of a thing seen from the side (PNG, JPEG, WebP), its profile as a path (SVG) or a table of radii and heights (CSV), or the mesh of a turned solid (STL, OBJ).
start-along-the-axis-as-the-file-says-until = Along the axis; as the file says until you type another
start-one-unit-is = One unit is
start-a-mesh-does-not-say-which-unit-it-is = A mesh does not say which unit it is in
start-reading = Reading
start-stopped = Stopped
start-read-it-again = Read it again
start-choose-a-file = Choose a file…
start-choose-a-file-name = Choose a file
start-width-height-pixels = { $width } × { $height } pixels
start-its-outline-is-traced-on-the-next-card = Its outline is traced on the next card, for you to look at.
start-here-at-t-t = here, at t = { $t }
start-formula-of-the-radius = Formula of the radius
start-z-is-the-height-above-the-start-in-mm = z is the height above the start in mm, t its share of the whole from 0 to 1, h the whole height. + - * / ^ and brackets; sin, cos, sqrt, abs, exp, ln and others; pi.
start-title = Start a piece
start-hint = from a shape; you can drag every knot afterwards
start-starter-shape = Starter { $shape }
start-from-formula = From a formula
start-a-file = A file
start-photo = Photo
start-drawing = Drawing
start-table = Table
start-solid = Solid
start-or-continue-with = Or continue with
start-projects-you-save-or-open-are-listed = Projects you save or open are listed here. You can also drop a project file on the window.
start-open-a-project = Open a project…
start-open-a-project-name = Open a project
start-drop-a-project-a-picture-or-a-shape-to = Drop a project, a picture or a shape to open it

## The steps menu

steps-steps = Steps
steps-all-steps-go-back-to-any = All steps: go back to any
steps-no-steps-yet = No steps yet
steps-as-it-was-opened = As it was opened
steps-earlier-steps = Earlier steps
steps-step-step-name = Step { $step }: { $name }
steps-now = now
steps-undone = undone

## The top strip

top-name-of-the-project-click-to-type = Name of the project; click to type
top-project-name = Project name
top-changes-not-saved-name = changes not saved · { $name }
top-saved-name = saved · { $name }
top-changes-not-saved = changes not saved
top-not-saved-yet = not saved yet
top-file = File

## Questions before something is lost

ask-save-title-first = Save “{ $title }” first?
ask-lost-by-closing = It has changes that are not saved. Closing the window would lose them.
ask-lost-by-starting = It has changes that are not saved. Starting another piece would lose them.
ask-lost-by-opening = It has changes that are not saved. Opening another project would lose them.
ask-save = Save
ask-discard = Discard
ask-keep-working = Keep working
ask-changed-elsewhere = { $file } was changed elsewhere
ask-other-saved = Another window or program has saved “{ $title }” in it.
ask-other-lost = The other version is lost
ask-not-readable = What is in it now cannot be read as a project.
ask-file-lost = What is in the file is lost
ask-read-only = { $file } is read-only
ask-marked = Somebody has marked it as not to be changed.
ask-stays-marked = It stays read-only
ask-this-version-goes-into-own-both-stay = This version goes into { $own }; both stay
ask-save-mine-as-a-copy = Save mine as a copy
ask-what-is-not-saved-here-is-lost = What is not saved here is lost
ask-open-the-other-version = Open the other version
ask-replace-it-with-mine = Replace it with mine
ask-name-already-exists = { $name } already exists
ask-it-is-in-folder = It is in { $folder }.
ask-choose-another-name = Choose another name
ask-the-file-stays-as-it-is = The file stays as it is
ask-replace-it = Replace it
ask-nothing-is-saved-yet = Nothing is saved yet
ask-save-as = Save as
ask-where-is-the-file = Where is the file?
ask-this-desktop-shows-no-file-dialog-type = This desktop shows no file dialog. Type the whole path, or find it:
ask-open = Open
ask-cancel = Cancel

## What commands say they did

told-the-text-is-copied = The text is copied.
told-the-pattern-is-copied = The pattern is copied.
told-the-spoken-script-is-copied = The spoken script is copied.
told-the-shop-text-is-copied = The shop text is copied.
told-pieces-made = Added to the project, with its counts pinned: { $names }.
told-left-out = Left out: { $what }.
told-copied-line = Copied: { $line }
told-changed-elsewhere = { $file } was changed elsewhere. Saving will ask what to do.
told-gone = { $file } is no longer there. Saving writes it again.
told-saved = { $what } saved as { $path }.
told-text-saved = The text is saved as { $path }.
told-name-is-not-a-plumpline-project-drop-a = { $name }: it is not a Plumpline project; drop a file that ends in .ron, a picture, or a shape (.csv, .svg, .stl, .obj)
told-the-course-title-is-open = The course “{ $title }” is open.
told-words-has-to-wait-a-file-dialog-is = { $words } has to wait: a file dialog is open, or a file is still in use.
told-a-yarn = Yarn
told-yarn-is-in-the-gauge-book = { $yarn } is in the gauge book.
told-your-changes-are-back-save-them-to = Your changes are back. Save them to keep them.
told-shaped-pinned-and-read-file-new-starts = Shaped, pinned and read. File, New… starts a piece of your own.

## How long ago

ago-moment = less than a minute ago
ago-minutes = { $n ->
        [one] 1 minute
       *[other] { $n } minutes
    } ago
ago-hours = { $n ->
        [one] 1 hour
       *[other] { $n } hours
    } ago
ago-days = { $n ->
        [one] 1 day
       *[other] { $n } days
    } ago

## First steps

first-drag-a-knot-of-the-outline = Drag a knot of the outline
first-pull-a-bars-end-or-pin-a-round = Pull a bar’s end, or pin a round
first-read-the-sheet-or-copy-it = Read the sheet, or copy it

## What is being done

doing-opening-a-project = Opening a project
doing-reading-a-pattern = Reading a pattern
doing-reading-a-file = Reading a file
doing-saving-the-text = Saving the text
doing-looking-at-the-file = Looking at the file
doing-comparing-the-versions = Comparing the versions
doing-writing-the-sheet = Writing the sheet
doing-drawing-the-body = Drawing the body
doing-printing-the-lesson = Printing the lesson
doing-saving-the-course = Saving the course
doing-reading-a-course = Reading a course
doing-saving-the-project = Saving the project

## Files that were written

file-sheet = Sheet
file-picture = Picture
file-lesson = Lesson
file-course = Course

## What an increase does to fabric

bend-ruffle = ruffle
bend-flat = flat
bend-cup = cup
bend-straight = straight
bend-draw-in = draw in

## The Lesson stage

lesson-each-round = Each round
lesson-chart = Chart: { $what }
lesson-no-rounds-yet = No rounds yet.
lesson-the-angles-are-shown-after-your = The angles are shown after your prediction.
lesson-your-prediction = Your prediction
lesson-answer = Answer
lesson-give-your-answer = Give your answer
lesson-increases-round-round = Increases: round { $round }
lesson-increases-round-round-gains-gained = Increases: round { $round } gains { $gained }, { $bend }
lesson-increases-round-round-bend = Increases: round { $round }, { $bend }
lesson-increases-of-1-round-rounds = Increases of { $rounds ->
        [one] 1 round
       *[other] { $rounds } rounds
    }
lesson-fabric = The fabric
lesson-fabric-other-side = The fabric from another side
lesson-step-step-of-all = step { $step } of { $all }
lesson-your-piece-relaxed = your piece, relaxed
lesson-rnd-round-gained-st = Rnd { $round } · { $gained } st
lesson-rnd-round = Rnd { $round }
lesson-preparing = preparing…
lesson-held-flat-released-after-your = held flat; released after your prediction
lesson-stopped = stopped
lesson-settling = settling
lesson-word-share = { $word }, { $share } %
lesson-you-can-change-this-after-your = you can change this after your prediction
lesson-flat-at = flat { $flat }
lesson-angle-missing-at-each-round-degrees = Angle missing at each round, degrees
lesson-as-the-fabric-lies = as the fabric lies
lesson-forecast = forecast
lesson-as-counted = as counted
lesson-round = round
lesson-missing = missing
lesson-kept-on-this-computer-only = kept on this computer only
lesson-your-piece = Your piece
lesson-why = Why
lesson-ask-again = Ask again
lesson-delete-all = Delete all
lesson-take-another-prediction-from-another = Take another prediction, from another learner for example
lesson-delete-every-kept-prediction-of-all = Delete every kept prediction, of all steps
lesson-the-rounds-to-work-are-on-the-steps = The rounds to work are on the step’s printed page.
lesson-there-are-no-rounds-yet = There are no rounds yet.
lesson-own-piece = Here your own piece relaxes, stitch by stitch: what its counts make of the fabric, with frills and corners where they are. Point at a round to see what it does; it is the same round in every stage.
lesson-no-ruffles = No round gains more than lies flat: nothing ruffles.
lesson-ruffles = { $n ->
        [one] One round gains more than lies flat: it ruffles.
       *[other] { $n } rounds gain more than lies flat: they ruffle.
    }
lesson-round-told = Rnd { $round } gains { $gained } where { $flat } lie flat: { $bend }. From the start to here { $mean } a round, where { $meanflat } lie flat: { $meanbend }.
lesson-round-bends = Rnd { $round }: { $bend }; from the start to here: { $meanbend }.
lesson-fabric-note = Fabric may pass through itself here, and card inserts and closing threads do not hold.
lesson-next = Next
lesson-print = Print
lesson-print-or-save-the-lesson = Print or save the lesson
lesson-continue = Continue
lesson-step-step-name-predicted = Step { $step }: { $name }, predicted
lesson-step-step-name = Step { $step }: { $name }
lesson-missing-angle = Missing angle
lesson-added-up-to-rnd-round = added up to Rnd { $round }
lesson-added-over-all-rounds = added over all rounds
lesson-added-up-after-your-prediction = added up after your prediction
lesson-of-720-which-close-a-ball = of 720°, which close a ball
lesson-the-hatched-part-is-what-closing-the = The hatched part is what closing the last round adds.
lesson-left-of-flat-there-is-too-much-fabric = Left of flat there is too much fabric, and it ruffles. Right of flat there is too little, and it cups.
lesson-missing-of = Missing angle: { $sum } of 720°
lesson-more-fabric-than-lies-flat = more fabric than lies flat
lesson-nearly-flat = nearly flat
lesson-on-the-way-to-a-ball = on the way to a ball
lesson-a-closed-ball = a closed ball
lesson-missing-words = Missing angle: { $words }
lesson-half-a-ball = half a ball
lesson-closed-ball = closed ball

## The Make stage

make-back-to-round-back = Back to round { $back }
make-keep-my-place = Keep my place
make-keep-what-is-worked-as-it-is = Keep what is worked as it is
make-rip-back-to-where-it-differs-from-the = Rip back to where it differs from the plan
make-begin-with-yarn-yarn = Begin with yarn { $yarn }.
make-from-here-on-in-yarn-yarn = From here on in yarn { $yarn }.
make-change-to-yarn-yarn-in-the-last-stitch = Change to yarn { $yarn } in the last stitch of this round.
make-work-on-name-key-goes-to-the-next = Work on { $name } ({ $key } goes to the next)
make-has-no-plan = has no plan
make-finished = finished
make-to-be-stuffed = to be stuffed
make-to-be-closed = to be closed
make-not-started = not started
make-round-round-of-last = round { $round } of { $last }
make-rows-first-last-of-all-of-this-round = rows { $first }–{ $last } of { $all } of this round
make-of-last = of { $last }
make-go-to-a-round = Go to a round
make-round = Round
make-round-to-go-to = Round to go to
make-round-number-stitch-at-of-count-word = Round { $number }, stitch { $at } of { $count }: { $word }
make-preparing-size = Preparing { $size }…
make-name-cannot-be-made-as-it-is = { $name } cannot be made as it is
make-nothing-can-be-made-in-size = Nothing can be made in { $size }
make-shape-it = Shape it
make-see-the-sizes = See the sizes
make-size-being-made-size-state = Size being made: { $size }, { $state }
make-title-choose-the-size-to-make-key-goes = { $title }: choose the size to make ({ $key } goes to the next)
make-choose-the-size-to-make-key-goes-to = Choose the size to make ({ $key } goes to the next)
make-make-size-state = Make { $size }, { $state }
make-rounds-of-piece-click-one-to-go-to-it = Rounds of { $piece }; click one to go to it
make-continue-from-round-r = Continue from round { $r }
make-times-to-go = { $times } to go
make-then-stitch = then { $stitch }
make-made-of-count = { $made } of { $count }
make-repeat-repeat-of-repeats = repeat { $repeat } of { $repeats }
make-note-on-round-round-key = Note on round { $round } ({ $key })
make-note-on = Note on round { $round }
make-a-note-on-this-round-enter-or-esc = A note on this round; Enter or Esc leaves it
make-about-low-high-g-of-stuffing-round = About { $low }–{ $high } g of stuffing. Round { $round } is worked.
make-all-rounds-rounds-are-worked = All { $rounds } rounds are worked
make-everything = Everything
make-what-is-finished = { $what } is finished
make-what-is-finished-in-size = { $what } is finished in { $size }
make-what-took-time = { $what } took { $time }.
make-all-copies = All { $copies }
make-made-of-copies-finished-left-left = { $made } of { $copies } finished; { $left } left.
make-something-to-lay-in = something to lay in
make-it-is-in = It is in
make-round-is-worked = Round { $round } is worked.
make-from-this-stitch-on-in-yarn = From this stitch on in yarn { $yarn }.
make-finish-this-stitch-with-yarn = Finish this stitch with yarn { $yarn }.
make-in-stitches-yarn = In { $left } stitches: yarn { $yarn }.
make-the-stuffing-is-in = The stuffing is in
make-it-is-fastened-off = It is fastened off
make-on-to-name = On to { $name }
make-pace-st-a-minute = { $pace } st a minute
make-left = left
make-your-pace = your pace
make-usual-pace = usual pace
make-whose-pace = { $whose }, { $pace }
make-paused = paused
make-only-five-minutes-of-a-pause-count-the = Only five minutes of a pause count; the next stitch ends it
make-worked = worked
make-time-between-two-steps-counts-five = Time between two steps counts, five minutes of a pause at most
make-about-time = about { $time }
size-started = started
size-made-of-copies-finished = { $made } of { $copies } finished
size-as-designed = As designed
size-as-designed-within = as designed
size-named-within = size { $name }
size-named = Size { $name }
make-sew-on = { $copies ->
        [one] { $piece } is
       *[other] Each of { $copies } { $piece } is
    } open at its edge of { $edge ->
        [one] 1 stitch
       *[other] { $edge } stitches
    }: sew it on there.

## The Sheet stage

sheet-pages = { $n ->
        [one] one page
       *[other] { $n } pages
    }
sheet-preparing = preparing…
sheet-preparing-text = Preparing…
sheet-sheet = Sheet
sheet-the-sheet-cannot-be-made-error = The sheet cannot be made: { $error }.
sheet-the-sheet-as = The sheet as
sheet-larger-pages = Larger pages
sheet-smaller-pages = Smaller pages
sheet-layout = Layout
sheet-your-details = Your details
sheet-export = Export
sheet-the-ending-of-the-file-name-decides = The ending of the file name decides: .pdf to print, .html for a browser, .md, .txt, .png for a picture of the first page, .srt or .vtt for captions.
sheet-paper = Paper
sheet-size-of-the-page = Size of the page
sheet-a4 = A4
sheet-letter = Letter
sheet-columns = Columns
sheet-one-with-pictures-beside-it-or-two-on = One with pictures beside it, or two on fewer pages
sheet-one = one
sheet-two = two
sheet-single-crochet = Single crochet
sheet-its-symbol-in-the-charts-both-are-in = Its symbol in the charts; both are in use
sheet-page-page-of-pages = Page { $page } of { $pages }
sheet-selects-this-round-in-every-view = Selects this round in every view
sheet-words = Words
sheet-whose-terms-and-which-house-style-the = Whose terms and which house style the pattern is written in
sheet-terms = Terms
sheet-not-yet-checked-by-a-native-reader-the = Not yet checked by a native reader; the sheet says so too.
sheet-house-style = House style

## The gauge book

book-from-the-gauge-book = From the gauge book
book-no-match = No match.
book-show-more-more-of-all = Show { $more } more of { $all }
book-search-by-yarn = Search by yarn
book-search-the-gauge-book = Search the gauge book
book-hand-stitches-sts-rounds-rnds-to = { $hand } · { $stitches } sts, { $rounds } rnds to { $length }
book-measured-on = measured { $day }
book-gauge-of-title-learned = Gauge of { $title }{ $learned }
book-delete-title = Delete { $title }
book-restore-title = Restore { $title }
book-delete-it-from-the-gauge-book = Delete it from the gauge book
book-title-deleted = { $title }, deleted
book-restore = Restore
book-hand-deleted = { $hand } · deleted

## The Sizes stage

sizes-beside-the-sizes = Beside the sizes
sizes-as-designed = as designed
sizes-of-piece = of { $piece }
sizes-sizes = Sizes
sizes-preparing = preparing…
sizes-add-a-size = Add a size
sizes-the-same-shape-at-another-height-width = The same shape at another height, width or gauge

## The sample that is measured

sample-crochet-this-piece-as-written-measure = Crochet this piece as written, measure and weigh it, and forecasts will follow your own gauge. Leave out what you did not measure.
sample-unstuffed = Unstuffed
sample-stitches-why = How many, and how wide they are in the unstuffed fabric: the more, the better
sample-stitches = Stitches
sample-rounds-why = How many, and how long they are in the unstuffed fabric. Press the piece flat: over the start and up the other side you measure twice as many
sample-rounds = Rounds
sample-stuffed = Stuffed
sample-measured-on-the-stuffed-piece = Measured on the stuffed piece
sample-around-the-widest = Around the widest
sample-height = Height
sample-a-tape-right-around-the-stuffed-piece = A tape right around the stuffed piece the long way, over its start and its end
sample-over-both-ends = Over both ends
sample-yarn = Yarn
sample-before-the-first-stitch = Before the first stitch
sample-after-the-last = After the last
sample-also-measured-pieces = Also measured: { $pieces }.
sample-what-you-measure-on-names-counts-too = What you measure on { $names } counts too.
sample-what-counted = { $what } counted
sample-what-measured = { $what } measured
sample-of-measured = { $what }, measured
sample-weight-of-the-yarn-you-have-ball = Weight of the yarn you have, ball included
sample-yarn-when = Yarn, { $when }
sample-unraveled-round = Unraveled round
sample-which-round-and-the-length-of-its-yarn = Which round, and the length of its yarn
sample-round-unraveled = Round unraveled
sample-yarn-of-the-round = Yarn of the round
sample-results = Results
sample-forecast-and-measurements = Forecast and measurements
sample-forecast = forecast
sample-now = now
sample-measured = measured
sample-use-this-gauge = Use this gauge
sample-gauge-book = Gauge book
sample-saves-it-for-yarn-on-this-hook-for = Saves it for { $yarn } on this hook, for every project.
sample-maker-why = Whose gauge it is; leave it empty if there is only one maker
sample-maker = Maker
sample-save-in-the-gauge-book = Save in the gauge book
sample-not-measured = { $value }, not measured
sample-before = Before the sample { $value }
sample-these-measurements-do-not-show-it-it = These measurements do not show it: it stays as it was
quantity-stiffness-short = stiffness along/around
sample-compared = { $what }: forecast { $forecast }, now { $now }, measured { $measured }

## Seams

seam-a-seam-joins-two-pieces-a-cap-and-a = A seam joins two pieces: a cap and a nut, a head and a body. Add a second piece with the arrow on this one’s name, above.
seam-no-seams-yet-a-seam-makes-two-pieces = No seams yet. A seam makes two pieces fit: sewn stitch to stitch, or one over the other with room to spare.
seam-add-a-seam = Add a seam
seam-numbered = Seam { $number }
seam-seam-number-first = Seam { $number }, first
seam-seam-number-second = Seam { $number }, second
seam-the-two-are = The two are
seam-sewn-stitch-to-stitch-or-the-second = Sewn stitch to stitch, or the second over the first
seam-seam-number-is = Seam { $number } is
seam-sewn = sewn
seam-slipped-over = slipped over
seam-may-change = May change
seam-which-of-the-two-is-fitted-to-the = Which of the two is fitted to the other
seam-seam-number-may-change = Seam { $number } may change
seam-either = either
seam-first = first
seam-second = second
seam-match-seam-number = Match seam { $number }
seam-match-them = Match them
seam-remove-seam-number = Remove seam { $number }
seam-remove = Remove
seam-how-much-wider-the-second-is-than-the = How much wider the second is than the first, across
seam-room-to-spare = Room to spare
seam-room-of-seam-number = Room of seam { $number }
seam-none = none
seam-whether-the-second-is-stuffed-when = Whether the second is stuffed when they meet; a cap is not, a lid may be
seam-the-second-is-stuffed = The second is stuffed
seam-open-start = open start
seam-open-end = open end
seam-round = round
seam-name-at-where = { $name } at { $place }
seam-name-at-round = { $name } at round

## Another yarn

swap-count-a-swatch-of-the-other-yarn = Count a swatch of the other yarn, worked in the round, right side out, unstuffed.
swap-stitches = Stitches
swap-other-yarn-stitches = Other yarn, stitches
swap-rounds = Rounds
swap-other-yarn-rounds = Other yarn, rounds
swap-over = over
swap-the-length-both-were-counted-over = The length both were counted over
swap-other-yarn-over = Other yarn, over
swap-hook = Hook
swap-shaft-diameter = Shaft diameter
swap-other-yarn-hook = Other yarn, hook
swap-as-counted-on-the-swatch = As counted on the swatch
swap-side-by-side = Side by side
swap-preparing = Preparing…
swap-now = now
swap-same-rounds = same rounds
swap-same-size = same size
swap-row-rounds = rounds
swap-row-stitches = stitches
swap-meters = meters
swap-minutes = minutes
swap-use-it-for-the-same-rounds = Use it for the same rounds
swap-use-it-for-the-same-size = Use it for the same size
column-size = Size
column-sized-by = Sized by
column-finished = Finished
column-scale = Scale
column-rounds = Rounds
column-stitches = Stitches
column-yarn = Yarn
column-stuffing = Stuffing
column-time = Time
sizes-no-other-sizes-yet-add-one-then-say = No other sizes yet. Add one, then say how high or wide it is to be: its rounds are planned again from the outline, never multiplied.
sizes-the-outline = the outline
sizes-name-of-size-number = Name of size { $number }
sizes-by-height = height
sizes-height = Height
sizes-by-width = width
sizes-width = Width
sizes-scale-factor = scale factor
sizes-gauge-same-size = gauge, same size
sizes-gauge-same-rounds = gauge, same rounds
sizes-seam-with = seam with { $piece }
sizes-size-number-sized-by-now = Size { $number } sized by { $now }
sizes-what-of-size-number = { $what } of size { $number }
sizes-factor-of-size-number = Factor of size { $number }
sizes-stitches = Stitches
sizes-rounds = Rounds
sizes-at-the-seam = at the seam
sizes-the-piece = the piece
sizes-why-name-cannot-be-made = Why { $name } cannot be made
sizes-this-is-as-near-as-whole-stitches-come = This is as near as whole stitches come.
sizes-notes-on-name = Notes on { $name }
sizes-minutes-min = { $minutes } min
sizes-more-about-size-number = More about size { $number }
sizes-necks-lips-and-openings-have-at-least = Necks, lips and openings have at least as many stitches as in the piece
sizes-keep-necks-and-openings = Keep necks and openings
sizes-repeats-why = As many repeats in a round as the piece has, and the same plain zone
sizes-keep-the-same-repeats = Keep the same repeats
sizes-make-the-piece-this-size = Make the piece this size
sizes-remove-this-size = Remove this size
sizes-necks-repeats-use-this-size-remove-it = Necks, repeats, use this size, remove it

## A toy to match

match-measure-one-place-of-a-finished-toy-of = Measure one place of a finished toy, of this pattern or another: this piece is planned in that size.
match-the-toy = The toy
match-column-toy = the toy
match-on-the-stuffed-toy-with-a-ruler-or-a = On the stuffed toy, with a ruler or a tape
match-it-measures = It measures
match-toy-measures = Toy measures
match-preparing = Preparing…
match-one-measurement-is-enough-the-rest = One measurement is enough: the rest follows from the shape
match-measured = Measured
match-toy-measured = Toy measured
match-height = height
match-width = width
match-around = around
match-at-its-widest-or-at-the-top-of-a-round = At its widest, or at the top of a round of this piece as it is designed
match-measured-at = Measured at
match-the-widest = the widest
match-round = round
match-toy-measured-at = Toy measured at
match-toy-measured-at-round = Toy measured at round
match-scale-factor = Scale factor
match-as-designed = as designed
match-matched = matched
match-size = size
match-rounds = rounds
match-stitches = stitches
match-of-this-piece-as-designed = of this piece as designed
match-use-it = Use it
match-what-the-size-is-to-be-called-in-the = What the size is to be called in the table
match-name = Name
match-name-of-the-matched-size = Name of the matched size
match-add-as-a-size = Add as a size
match-make-the-piece-this-size = Make the piece this size
match-a-size-named-name-is-in-the-table = A size named { $name } is in the table.
match-the-table-is-full-remove-a-size-to-add = The table is full; remove a size to add another.

## What a sample tells

quantity-stitch-width = stitch width
quantity-round-height = round height
quantity-firmness = firmness
quantity-stiffness = stiffness along over around
quantity-yarn = yarn in a stitch

## The results of simplicity

results-stitches-likely-off-the-outline-by = Stitches likely off the outline by different lines
results-different-lines = different lines
results-likely-st-off = likely st off

## A ball to check the gauge by

ball-increase-by-6-from-a-ring-of-6-work = Increase by 6 from a ring of 6, work even rounds, decrease by 6 back to 6; stuffed like this piece.
ball-stitches-around = { $n } st around
ball-ball-stitches-around = Ball, stitches around
ball-even-rounds = even rounds
ball-even-rounds-name = Ball, even rounds
ball-from-the-ring-to-the-close-with-the = From the ring to the close, with the ball stuffed
ball-measured-height = Measured height
ball-ball-height = Ball, height
ball-across-the-even-rounds = Across the even rounds
ball-measured-width = Measured width
ball-ball-width = Ball, width
ball-this-gauge-forecasts-height-width-high = This gauge forecasts { $height } × { $width } high × wide.
ball-forecast-measure-yours-and-type-both = { $forecast } Measure yours and type both.
ball-forecast-yours-agrees-with-this-round = { $forecast } Yours agrees with this round height.
ball-forecast-yours-has-the-shape-of-rounds = { $forecast } Yours has the shape of rounds { $agrees } high; this swatch says { $now }.
ball-use-rounds-rounds-to-length = Use { $rounds } rounds to { $length }

## The bend strip

strip-bend-strip = Bend strip
strip-stitches-per-round = stitches per round
strip-added = added
strip-decreased = decreased
strip-change-of-slope = change of slope
strip-lies-flat-stitches = lies flat, +{ $stitches }
strip-sharpest-change-of-slope-degrees-in = sharpest change of slope, { $degrees }° in rnd { $round }

## The stuffed body

body-stuffed-body = Stuffed body
body-cut-open = Cut open
body-take-away-the-front-half-fabric-and = Take away the front half: fabric and stuffing
body-relax = Relax
body-relax-every-stitch = Relax every stitch
body-let-every-stitch-find-its-place-frills = Let every stitch find its place: frills wave, stacked increases make corners
body-export = Export…
body-export-the-body-as-a-picture = Export the body as a picture
body-turn-back = Turn back
body-turn-the-body-back = Turn the body back
body-as-it-was-at-first-a-double-click-does = As it was at first; a double click does this too
body-body = Body
body-drag-to-turn = drag to turn
body-rnd-round-count-st = Rnd { $round } · { $count } st

## The card of four leaves

card-size-yarn-stuffing-time-and-fit = Size, yarn, stuffing, time and fit
card-what-to-know-before-you-crochet-it = What to know before you crochet it
card-what-every-round-must-keep-to = What every round must keep to
card-the-results-to-choose-from-and-what = The results to choose from, and what each costs and saves
card-checks-rules-simplicity = Checks, rules, simplicity

## Measurements of the piece

measured-high-wide-deep = high × wide × deep
measured-h-w-d = h × w × d
measured-high-wide = high × wide
measured-h-w = h × w
measured-minutes = { $n } min
measured-measurements = Facts
measured-stuffed = stuffed { $how }
measured-rounds = Rounds
measured-stitches = Stitches
measured-stuffing = Stuffing
measured-time = Time
measured-and-more-more-yarn-is-estimated-20 = and { $more } more; yarn is estimated, ±20 %
measured-estimated-yarn-20-stuffing-and-time-by = estimated: yarn ±20 %, stuffing and time by rules of thumb
measured-yarn-letter-name = Yarn { $letter }, { $name }
measured-change-its-name-color-or-length = Change its name, color or length
measured-fit = Worked exactly as written, the finished piece is { $mean } stitches off the wanted line on average, { $most } at the widest gap. Hands differ in gauge, pull and stuffing: { $likely } is what to expect.
measured-fit-to-outline = Fit to outline
measured-likely-st = { $likely } st
measured-as-written-fit-by-hand-likely = as written { $fit }, by hand likely
measured-by-hand-likely = by hand likely
measured-snug = ¼ snug
measured-1-st-loose = 1 st loose
measured-unit-high-wide = { $symbol } high × wide
measured-unit-stuffing = { $unit } stuffing
measured-word-rounds = rounds
measured-st = st
measured-to-make = to make
measured-st-off = st off

## The gauge card

gauge-gauge = Gauge
gauge-more = More
gauge-more-about-the-fabric = More about the fabric
gauge-a-ball-you-made-to-check-it-by-spiral = A ball you made to check it by, spiral or joined, other swatches, stuffing
gauge-stitches = Stitches
gauge-over = over
gauge-stitches-over = Stitches over
gauge-rounds = Rounds
gauge-rounds-over = Rounds over
gauge-count-it-in-the-spiral-rounds-1-higher = Count it in the spiral: rounds 1 % higher make a ball 2 % higher.
gauge-hook = Hook
gauge-a-smaller-hook = A smaller hook
gauge-a-larger-hook = A larger hook
gauge-name-the-swatch-stays-as-counted = { $name }; the swatch stays as counted
gauge-name-of-the-piece = { $name } of the piece
gauge-firmness = Firmness
simplicity-default = default
simplicity-faithful = faithful
simplicity-simple = simple
simplicity-default-button = Default
gauge-the-simplest-rounds-whose-likely-fit = The simplest rounds whose likely fit no hand can tell from the best
gauge-likely-off = likely { $likely } st off
gauge-given-by-its-rounds = given by its rounds
gauge-in-one-repeat = { $share } % in one repeat
gauge-lines-different-lines = { $lines } different lines

## The key of the board

legend-wanted = wanted
legend-forecast = forecast
legend-selected-round = selected round
legend-off-the-outline = off the outline
legend-closing-thread = closing thread
legend-seam = seam
legend-card-inside = card inside
legend-plain = plain
legend-key = Key

## More about the fabric

fabric-a-ball-you-made = A ball you made
fabric-working = Working
fabric-swatches-in-other-stitches = Swatches in other stitches
fabric-heights-from-memory-marked-assumed = Heights from memory, marked assumed, make a forecast less sure. A swatch in the round settles them.
fabric-stuffing-grams-per-liter = Stuffing, grams per liter
fabric-stuffing-per-liter-name = Stuffing per liter, { $name }
fabric-common-practice-no-source-weigh-what-a = Common practice, no source. Weigh what a sample takes to know your own.
fabric-a-spiral-has-no-seam-but-climbs-joined = A spiral has no seam but climbs; joined rounds end where they began, with a seam that shows
fabric-rounds = Rounds
fabric-spiral = spiral
fabric-joined = joined
fabric-whether-the-chain-a-joined-round = Whether the chain a joined round begins with is its first stitch
fabric-the-chain-counts-as-a-stitch = The chain counts as a stitch
fabric-the-hand-that-holds-the-hook-a-left = The hand that holds the hook: a left hand works its rounds clockwise
fabric-hand = Hand
fabric-right = right
fabric-left = left
fabric-yarn-under-makes-a-tighter-crossed = Yarn under makes a tighter, crossed stitch. Only noted: your swatch has the height it gives already
fabric-single-crochet = Single crochet
fabric-yarn-over = yarn over
fabric-yarn-under = yarn under
fabric-half-double = Half double
fabric-double = Double
fabric-a-swatch-in-this-kind-of-stitch-worked = A swatch in this kind of stitch, worked in the round and counted like that of single crochet
fabric-counted = Counted…
fabric-name-count-a-swatch = { $name }, count a swatch
fabric-give-the-stitches-and-rounds-of-a = Give the stitches and rounds of a swatch
fabric-times-as-high-assumed = { $times } × as high, assumed
fabric-name-no-swatch = { $name }, no swatch
fabric-back-to-the-assumed-height = Back to the assumed height
fabric-name-stitches = { $name }, stitches
fabric-suffix-stitches = st
fabric-suffix-rounds = rnds
fabric-name-rounds = { $name }, rounds
fabric-name-over = { $name }, over
fabric-how-high-a-round-is-that-is-worked = How high a round is that is worked into one loop only, against one worked into both
fabric-one-loop-only = One loop only
fabric-times-as-high = × as high
fabric-one-loop-only-height = One loop only, height
fabric-one-loop-only-not-measured = One loop only, not measured
fabric-assumed = assumed

## Checks

checks-no-problems-found = No problems found.
checks-select-these-rounds = Select these rounds

## Rules

rules-ends = Ends
rules-counts = Counts
rules-placement = Placement
rules-plain-rounds = Plain rounds
rules-start = Start
rules-how-many-stitches-the-foundation-ring = How many stitches the foundation ring starts with: fewer make a finer point, more a flatter start
rules-foundation-ring = Foundation ring
rules-this-piece-starts-open = this piece starts open
rules-an-oval-starts-on-a-chain = an oval starts on a chain
rules-automatic = automatic
rules-how-many-stitches-are-left-to-close = How many stitches are left to close: the fewer, the smaller the closing
rules-last-round = Last round
rules-this-piece-ends-open = this piece ends open
rules-fewest-stitches-a-round-in-the-middle = Fewest stitches a round in the middle may have: a neck must still let a finger and the stuffing through
rules-smallest-neck = Smallest neck
rules-counts-that-share-a-divisor-keep-one = Counts that share a divisor keep one repeat all the way, and let a motif go around without a jog
rules-in-multiples-of = In multiples of
rules-any-count = any count
rules-most-stitches-a-round-may-gain-or-lose = Most stitches a round may gain or lose: small steps show less and are easier to count
rules-largest-change = Largest change
rules-off = off
rules-the-second-half-repeats-the-first = The second half repeats the first backward, so you only learn one half
rules-both-halves-alike = Both halves alike
rules-more-stitches-than-lie-flat-make-the = More stitches than lie flat make the fabric fold: a skirt, a wavy lip. Without it no round gains so many
rules-rounds-may-gain-more-than-lies-flat = Rounds may gain more than lies flat
rules-plain-rounds-come-together-so-that = Plain rounds come together, so that long stretches need no counting
rules-plain-rounds-together = Plain rounds together
rules-staggered-increases-do-not-show = Staggered increases do not show; stacked ones line up into corners, if you want them
rules-increases = Increases
rules-staggered = staggered
rules-stacked = stacked
rules-how-far-each-round-leans-against-the = How far each round leans against the one below, in stitches: measure it on a swatch in the round. 0.17 is assumed
rules-spiral-drift = Spiral drift
rules-an-embroidered-face-or-eyes-sit-best = An embroidered face, or eyes, sit best where no stitch is added or decreased
rules-plain-zone-number = Plain zone { $number }
rules-plain-zone-number-first-round = Plain zone { $number }, first round
rules-plain-zone-number-last-round = Plain zone { $number }, last round
rules-to = to
rules-remove-plain-zone-number = Remove plain zone { $number }
rules-let-these-rounds-be-shaped = Let these rounds be shaped
rules-add-a-plain-zone = Add a plain zone
rules-add-one-from-round-r = Add one from round { $r }
rules-select-a-round-first = select a round first
rules-worked-along-both-sides-of-a-chain-two = Worked along both sides of a chain: two half rounds and two straight sides this long. 0 is round
rules-oval-start-straight-side = Oval start, straight side
rules-round = round
rules-start-from-the-other-end = Start from the other end
rules-work-the-piece-the-other-way-up-pins = Work the piece the other way up; pins, plain zones and yarns go with it
results-no-results-while-the-outline-cannot-be = No results while the outline cannot be worked: { $error }.
results-preparing-the-results = Preparing the results…
results-the-results-come-when-you-stop = The results come when you stop dragging
results-likely = likely
results-st-off = st off
results-lines = lines
results-repeats = repeats
results-result-name = Result { $name }
results-use-this-result = Use this result
results-rounds-name = Rounds, { $name }
results-preparing = Preparing…

## The round bars

bars-round-bars = Round bars
bars-round-pinned = Round { $round }: { $words } [{ $count }], yarn { $yarn }, pinned
bars-round = Round { $round }: { $words } [{ $count }], yarn { $yarn }
bars-end-of-round-number = End of round { $number }
bars-change-yarn = Change yarn
bars-change-yarn-from-this-round-on = Change yarn from this round on
bars-choices-for-this-round = Choices for this round
bars-stitch-loop-shaping-and-yarn-from-this = Stitch, loop, shaping and yarn from this round on
bars-increase = increase
bars-decrease = decrease
bars-one-cell-one-stitch-drag-an-end-to-pin = one cell = one stitch; drag an end to pin
bars-one-cell-one-stitch = one cell = one stitch
bars-foundation-chain = foundation chain
bars-stuff-now-mass = Stuff now, { $mass }

## The card of a round

round-round-round = Round { $round }
round-stitch-from-here-on = Stitch from here on
round-this-round-worked-into = This round worked into
round-yarn-from-here-on = Yarn from here on
round-pinned-at-count-stitches = Pinned at { $count } stitches
round-pin-at-count-stitches = Pin at { $count } stitches
round-no-increases-or-decreases-from-this = No increases or decreases from this round on, for this many rounds ({ $key } for this one)
round-plain-for = Plain for
round-off = off
round-plain-rounds = Plain rounds
round-single = single
round-half-double = half double
round-double = double
round-both-loops = both loops
round-front-only = front only
round-back-only = back only
round-worked-into = Worked into
round-yarn-from-here-on-letter-name = Yarn from here on: { $letter } { $name }
round-another-yarn-from-here-on = Another yarn from here on

## The outline board

board-rnd-round = Rnd { $round }
board-finished-oval-width-depth = finished oval, width × depth
board-finished = finished
board-width = Width
board-height = Height
board-name-of-the-finished-piece-click-to = { $name } of the finished piece; click to type another
board-held-by-thread = Held by a closing thread
board-held-by-a-seam = Held by a seam
board-a-card-lies-from-here-to-the-next-knot = A card lies from here to the next knot
board-held-by-nothing = Held by nothing
board-fabric-alone-holds-no-corner = Fabric alone holds no corner
board-a-thread-pulled-through-that-round-and = A thread pulled through that round and tied
board-sewn-to-another-piece-there = Sewn to another piece there
board-card-from-here-to-the-next-knot = Card from here to the next knot
board-stiff-card-or-plastic-inside-keeps-the = Stiff card or plastic inside keeps the fabric level there
board-knot = Knot { $knot }
board-knot-left = Knot { $knot }, left side
board-make-it-a-corner = Make it a corner
board-make-it-a-pointed-tip = Make it a pointed tip
board-make-it-smooth = Make it smooth
board-open-this-end = Open this end
board-close-this-end = Close this end
board-move-or-scale-the-picture = Move or scale the picture
board-add-a-knot-here = Add a knot here
board-stiff-card-or-plastic-inside-keeps = Stiff card or plastic inside keeps the fabric level there
board-card-between-these-two-knots = Card between these two knots
board-unpin-round-round = Unpin round { $round }
board-pin-round-round-at-count-stitches = Pin round { $round } at { $count } stitches
board-pull-a-thread-sew-it-or-put-a-card-in = pull a thread, sew it or put a card in
board-fabric-this-flat-wrinkles-a-rounder = fabric this flat wrinkles; a rounder outline holds
board-put-a-card-in-or-make-the-side-steeper = put a card in or make the side steeper
board-round-the-outline-or-hold-it-there = round the outline, or hold it there
board-ease-the-outline-or-pin-more-stitches = ease the outline, or pin more stitches
board-rnd = rnd { $round }
board-rnds = rnds { $first }–{ $last }
board-zone-wrinkles = wrinkles, { $off }
board-zone-unheld = unheld, { $off }
board-several-knots-selected = { $several } knots selected
board-knot-knot-selected = knot { $knot } selected
board-drag-a-knot-the-rounds-follow = drag a knot; the rounds follow
board-remove = Remove
board-hold = Hold
board-what-holds-this-knot = What holds this knot
board-a-closing-thread-a-seam-or-a-card = A closing thread, a seam or a card, since fabric alone holds no corner
board-error-the-rounds-shown-are-the-last = { $error }. The rounds shown are the last that worked.
board-picture = Picture
board-select-the-picture-to-move-and-scale = Select the picture, to move and scale it
board-zoom-out = Zoom out
board-zoom-in = Zoom in
board-name-the-wheel-does-this-too = { $name }; the wheel does this too
board-neck = Neck
board-the-neck-of-the-finished-piece-side-to = The neck of the finished piece, side to side; click to type another
board-known-length-end-end = Known length, end { $end }
board-put-both-ends-on-something-of-a-length = Put both ends on something of a length you know
board-known-length = Known length
board-the-true-length-type-it-and-the = The true length; type it and the picture is scaled

## The picture on the board

photo-done = Done
photo-deselect-the-picture = Deselect the picture
photo-back-to-the-knots-esc = Back to the knots (Esc)
photo-remove = Remove
photo-remove-the-picture = Remove the picture
photo-remove-it-its-file-stays = Remove it; its file stays
photo-replace = Replace…
photo-replace-the-picture = Replace the picture
photo-another-one-in-its-place = Another one in its place
photo-trace = Trace…
photo-trace-the-picture = Trace the picture
photo-find-its-outline-to-look-at-first = Find its outline, to look at first
photo-hide = Hide
photo-hide-the-picture = Hide the picture
photo-keep-it-out-of-sight = Keep it out of sight
photo-lock = Lock
photo-lock-the-picture = Lock the picture
photo-keep-it-in-its-place = Keep it in its place
photo-opacity = opacity
photo-opacity-name = Opacity

## The place of a knot

readout-width = width
readout-radius = radius
readout-height = height
readout-wanted-line = wanted line
readout-knot-knot-what = Knot { $knot } { $what }
readout-of-the-wanted-line-click-to-type = Of the wanted line; click to type another
readout-show-the-radius = Show the radius
readout-show-the-width = Show the width
readout-name-instead = { $name } instead
board-new-value = New value: { $what }
board-the-known-length-has-no-size-pull-its = The known length has no size; pull its two ends apart first.
board-scale-height = Scale height
board-scale-width = Scale width
board-drag-to-scale-the-height-from-the-foot = Drag to scale the height, from the foot
board-drag-to-scale-the-width-from-the-axis = Drag to scale the width, from the axis
board-scaled = { $what } { $length }
    { $share } % of what it was

## The trace card

trace-keys = By keys, on the picture: arrows move a cross, with Shift further; Space starts a mark and ends it, Backspace undoes the last.
trace-title = Trace
trace-hint = look before you use the outline
trace-the-picture-with-the-traced-line = The picture with the traced line
trace-of-the-thing-along-its-axis-without = Of the thing along its axis, without what is cut off. Until you type one, it follows from the known length on the board.
trace-height = Height
trace-how-far-the-outline-may-be-from-the = How far the outline may be from the edge; less takes more knots
trace-tolerance = Tolerance
trace-the-mean-of-both-or-one-of-them = The mean of both, or one of them
trace-side = Side
trace-mean = mean
trace-left = left
trace-right = right
trace-the-end-of-the-thing-where-the-piece = The end of the thing where the piece starts
trace-start = Start
trace-top = top
trace-bottom = bottom
trace-a-handle-or-an-ear-which-no-turned = A handle or an ear, which no turned shape has
trace-cut-off-what-is-not-round = Cut off what is not round
trace-where-the-background-is-not-plain-draw = Where the background is not plain: draw a rectangle around the thing, and strokes on it and beside it
trace-draw-on-the-picture = Draw on the picture
trace-mark = Mark
trace-draw = Draw
trace-undo-the-last-mark = Undo the last mark
trace-clear-all-marks = Clear all marks
trace-found = Found
trace-nothing-yet = Nothing yet
trace-trace-again = Trace again
trace-tracing = Tracing
trace-stopped = Stopped
trace-use-the-outline = Use the outline
trace-it-replaces-the-outline-you-can-then = It replaces the outline; you can then drag its knots
trace-number-cut-off = { $number } cut off
start-its-name-is-not-readable-text = its name is not readable text
start-rename-it = rename it

## The Assembly stage: cords, loops, wires, joints

attach-remove = Remove
attach-remove-one = Remove: { $what }
attach-held-by = Held by
attach-down-to = Down to
attach-around-it-or-pulled-through-it = Around it, or pulled through it
attach-goes = Goes
attach-around = around
attach-through = through
attach-cord-goes = Cord goes
attach-on-which-side-of-the-fabric-they-are = On which side of the fabric they are
attach-knots = Knots
attach-inside = inside
attach-outside = outside
attach-drop = Drop
attach-how-far-below-the-other-end-hangs = How far below the other end hangs
attach-free-loop = Free loop
attach-how-long-the-free-loop-above-is = How long the free loop above is
attach-drop-of-the-cord = Drop of the cord
attach-thick = Thick
attach-thickness-of-the-cord = Thickness of the cord
attach-how-thick-it-is = How thick it is
attach-strands = Strands
attach-strands-of-the-cord = Strands of the cord
attach-how-many-cords-go-down = How many cords go down
attach-on = On
attach-on-the-axis-or-on-the-fabric-beside-it = On the axis, or on the fabric beside it
attach-sits = Sits
attach-on-the-axis = on the axis
attach-aside = aside
attach-loop-sits = Loop sits
attach-from-front = From front
attach-turn-of-the-loop = Turn of the loop
attach-how-far-around-from-the-front-the-way = How far around from the front, the way the rounds run
attach-around-large = Around
attach-length-of-the-loop = Length of the loop
attach-length-of-the-loop-all-around = Length of the loop all around
attach-stands-off = Stands off
attach-how-far-the-loop-stands-off = How far the loop stands off
attach-from-the-fabric-to-where-it-hangs = From the fabric to where it hangs
attach-thickness-of-the-loop = Thickness of the loop
attach-carries = Carries
attach-stands-in = Stands in
attach-what-it-is-made-of = What it is made of
attach-metal = Metal
attach-free = Free
attach-free-length-of-the-wire = Free length of the wire
attach-between-the-two-bodies = Between the two bodies
attach-thickness-of-the-wire = Thickness of the wire
attach-how-thick-one-strand-is = How thick one strand is
attach-strands-of-the-wire = Strands of the wire
attach-how-many-are-side-by-side = How many are side by side
attach-the-part-that-turns-on-it-with-its = The part that turns on it, with its copies
attach-turns = Turns
attach-part-that-turns = Part that turns
attach-passes = Passes
attach-passes-of-the-thread = Passes of the thread
attach-how-often-the-thread-goes-through = How often the thread goes through
attach-which-part = Which part
attach-its-end = its end
attach-its-start = its start
attach-its-neck = its neck
attach-its-lip = its lip
attach-a-round = a round
attach-a-neck-and-a-lip-are-found-by-its = A neck and a lip are found by its shape
attach-at = At
attach-name-at = { $name }, at
attach-name-round = { $name }, round
attach-after-round = After round
attach-the-round-after-which-it-is-held = The round after which it is held
attach-cut-length-in-all-it-holds-bears-g-g = Cut { $length } in all; it holds { $bears_g } g
attach-it-holds-times-times-what-stands-on-it = It holds { $times } times what stands on it; cut { $length }
attach-it-buckles-too-soon-it-needs-at-least = It buckles too soon: it needs at least { $mm } mm
attach-it-buckles-too-soon-at-any-thickness = It buckles too soon, at any thickness
attach-cut-length-of-thread = Cut { $length } of thread
attach-it-hangs-leaning = It leans by { $deg }°; cut { $length } in all
attach-it-hangs-upright = It hangs upright; cut { $length } in all
attach-leg-is-slack = Cord { $number }: { $length }, it hangs slack
attach-leg-is = Cord { $number }: { $length }, it bears { $bears_g } g
attach-name-turn = { $name }, from the front
attach-cord-number = Cord { $number }
attach-how-far-above-the-cords-meet = How far above its highest place, or above their middle, the cords meet
attach-height-of-the-meeting-point = Height of the meeting point
attach-above = Meet above
attach-all-equal = all equal
attach-for-upright = to hang upright
attach-cut-to-hang-upright-or-equal = As long as each must be to hang upright, or all the same
attach-how-many-cords-meet-above = How many cords meet above
attach-cords = Cords
attach-lengths = Lengths
attach-on-the-sheet = On the sheet
attach-row = Attachment { $number }: { $title }, { $below }
attach-row-refused = Attachment { $number }: { $title }, { $below }, not suitable for who it is made for

## The Assembly stage: parts

part-its-end = its end
part-its-start = its start
part-its-front = its front
part-its-back = its back
part-what-of-it-is-up-when-the-toy-stands = What of it is up when the toy stands
part-up-is = Up is
part-a-part-that-is-pressed-flat-never-is = A part that is pressed flat never is
part-stuffed = Stuffed
part-its-front-is-the-plane-through-this = Its front is the plane through this stitch and its axis: all that it carries is counted from there
part-front-at-round = Front, at round
part-round-of-its-front = Round of its front
part-after-stitch = After stitch
part-stitch-of-its-front = Stitch of its front
part-name-less = { $name }, less
part-name-more = { $name }, more

## The Assembly stage: the toy

toy-parts = Parts
toy-selected = Selected
toy-steps = Steps
toy-measurements = Facts
toy-no-part-is-in-its-place-yet = No part is in its place yet.
toy-where-a-part-sits-and-whether-it-fits = Where a part sits, and whether it fits.
toy-what-is-done-first-what-next = What is done first, what next.
toy-what-it-weighs-whether-it-stands = What it weighs, whether it stands.
toy-piece-becomes-the-body-eyes-a-nose-a = { $piece } becomes the body. Eyes, a nose, a loop to hang by go on it, and every piece you design with it.
toy-piece-becomes-the-body-the-other-piece = { $piece } becomes the body; the other piece goes on it.
toy-piece-becomes-the-body-the-other-n = { $piece } becomes the body; the other { $n } pieces go on it, and on one another.
toy-put-the-pieces-together = Put the pieces together
toy-for-a-baby = a baby
toy-for-a-child = a soft toy
toy-for-three-and-over = 3 and over
toy-for-ornament = an ornament
toy-made-for = made for
toy-made-for-name = Made for
toy-hangs = hangs
toy-tips-at = tips at { $deg }°
toy-rocks-upright = rocks upright
toy-rolls-over = rolls over
toy-falls-over = falls over
toy-upright = upright
toy-forward = forward
toy-back = back
toy-aside = aside
toy-weight = Weight
toy-between-low-and-high-g-makers-differ = Between { $low } and { $high } g: makers differ
toy-stands = Stands
toy-how-far-it-can-be-tilted-before-it = How far it can be tilted before it tips, as if it were rigid
toy-hangs-large = Hangs
toy-how-far-its-top-leans-as-if-it-were = How far its top leans, as if it were rigid
toy-map-of-part = Map of { $part }
toy-from-outside-front-in-the-middle = from outside, front in the middle
toy-front-in-the-middle = front in the middle
toy-arrow-keys-left-and-right-a-stitch-up = Arrow keys: Left and Right a stitch, Up and Down a round
toy-add-a-part = Add a part
toy-cord-or-wire = Cord or wire
toy-a-piece-eyes-a-nose-on-what-is = A piece, eyes, a nose: on what is selected
toy-what-the-toy-hangs-by-what-joins-two = What the toy hangs by, what joins two bodies, what a part turns on
toy-on-on = On { $on }
toy-by-itself = By itself
toy-piece-as-another-body = { $piece } as another body
toy-eye = eye
toy-nose = nose
toy-small-thing = small thing
part-remove = Remove
part-remove-part = Remove { $part }
part-with-what-it-carries-del = With what it carries (Del)
part-what-carries-it = What carries it
part-sits-on = Sits on
part-by = By
part-the-edge-it-is-put-on-by-and-how = The edge it is put on by, and how
part-attached-by = Attached by
part-after-round = After round
part-round = Round
part-round-of-its-place = Round of its place
part-the-round-of-what-carries-it-where-its = The round of what carries it where its middle is
part-stitches-from-front = Stitches from front
part-stitches-of-its-place-from-the-front = Stitches of its place from the front
part-counted-the-way-the-rounds-run = Counted the way the rounds run; negative the other way
part-around-the-line-upright-on-the-fabric = Around the line upright on the fabric; 0 has its front toward later rounds
part-turn = Turn
part-turn-of-the-part = Turn of the part
part-leaning-from-that-line-toward-its-own = Leaning from that line toward its own front
part-tilt = Tilt
part-tilt-of-the-part = Tilt of the part
part-sunk-in = Sunk in
part-how-deep-it-is-sunk-in = How deep it is sunk in
part-pushed-into-what-carries-it-along-its = Pushed into what carries it along its own axis; negative stands off
part-one = one
part-mirrored = mirrored
part-around = around
part-copies = Copies
part-copies-of-the-part = Copies of the part
part-how-many = How many
part-copies-around = Copies around
part-evenly-around-from-its-place = Evenly around from its place
part-sewn-on = sewn on
part-a-washer-inside = a washer inside
part-a-thread-it-turns-on = a thread it turns on
part-glue = glue
part-what-holds-it-glue-alone-does-not = What holds it; glue alone does not
part-held-by = Held by
part-push-it-in-mm-mm-further = Push it in { $mm } mm further
part-on-the-sheet = On the sheet
toy-point-at-one-on-the-toy = point at one on the toy
toy-does-not-fit = does not fit
toy-a-small-part = a small part
toy-not-suitable-for-who-it-is-made-for = not suitable for who it is made for
toy-part-row = Part { $part }, { $below }
toy-toy = Toy
toy-preparing = preparing…
toy-drag-to-turn-click-to-select-a-part = drag to turn, click to select a part
toy-drag-the-selected-part-to-move-it = drag the selected part to move it
toy-look-at-it = Look at it: { $side }
toy-balance = Balance
toy-show-its-balance = Show its balance
toy-its-center-of-mass-and-what-it-stands = Its center of mass, and what it stands on or hangs from
toy-fit-the-toy = Fit the toy
toy-all-of-it-in-sight = All of it in sight
toy-zoom-in = Zoom in
toy-larger = Larger
toy-zoom-out = Zoom out
toy-smaller = Smaller
toy-eyes = Eyes
toy-nose-large = Nose
toy-other-small-thing = Other small thing
toy-loop-or-ring-to-hang-by = Loop or ring to hang by
toy-cord-to-hang-by = Cord to hang by
toy-cords-from-several-places = Cords from 2 or 3 places
toy-cord-to-another-body = Cord to another body
toy-wire-to-another-body = Wire to another body
toy-thread-joint = Thread joint
toy-nothing-yet-click-a-part-in-the-list = Nothing yet. Click a part, in the list or on the toy: you see here where it sits, and whether it fits.

## The Assembly stage: small things

small-what-the-sheet-calls-it-left-empty-for = What the sheet calls it; left empty for what it is
small-name = Name
small-name-of-the-small-thing = Name of the small thing
small-across = Across
small-across-it = Across it
small-deep = Deep
small-how-deep-it-is = How deep it is
small-long = Long
small-how-long-it-is = How long it is
small-long-is-away-from-what-carries-it = Long is away from what carries it
small-embroidered-in-yarn-otherwise-it-has-a = Embroidered in yarn; otherwise it has a shank, and a washer inside
small-embroidered = Embroidered
small-how-wide-it-is = How wide it is
small-its-diameter = Its diameter
small-weighs = Weighs
small-what-it-weighs = What it weighs
small-0-is-not-known-then-it-is-guessed-from = 0 is not known: then it is guessed from its size
toy-in-working-order = in working order
toy-nothing-to-do-yet-put-a-part-on-the = Nothing to do yet: put a part on the body.
toy-step-number-title-below = Step { $number }: { $title }, { $below }
toy-on-on-small = on { $on }
toy-before-stuffing = before stuffing
toy-embroidered = embroidered
toy-sts-each = { $sts } each
toy-sewn-around = sewn around
toy-together = together
toy-apart = Apart
toy-parts-pulled-apart = Parts pulled apart

## Where parts sit, in words

placed-name-place-of-all = { $name }, { $place } of { $all }
placed-2-mirrored = × 2, mirrored
placed-n-around = × { $n }, around
placed-the-body = the body
placed-a-body-of-its-own = a body of its own
placed-on-on = on { $on }
placed-on-at = on { $on }, { $place }
placed-all-around-rnds-first-last = all around, Rnds { $first }–{ $last }
placed-all-around-rnd-first = all around Rnd { $first }
placed-rnds-first-last = Rnds { $first }–{ $last }
placed-rnd-first = Rnd { $first }
placed-between-apart = between Rnds { $last } and { $first }
placed-between = between Rnds { $from } and { $to }
placed-over-one-another = over one another
placed-1-st-apart = 1 st apart
placed-sts-apart = { $n } sts apart
placed-n-sts = { $n } sts
placed-along-place = along { $place }
placed-sunk-in-sewn-where-the-two-meet-around = Sunk in: sewn where the two meet, { $around }
placed-pressed-flat-n-sts-through-both-layers = Pressed flat: { $n } sts through both layers, { $around }
placed-sews-on-with-n-sts-around = Sews on with { $n } sts, { $around }
placed-words-at-rnd-round = { $words } at Rnd { $round }
placed-its-open-end = its open end
placed-its-open-start = its open start
placed-its-end-sunk-in = its end, sunk in
placed-its-start-sunk-in = its start, sunk in
placed-its-end-pressed-flat = its end, pressed flat
placed-its-start-pressed-flat = its start, pressed flat
placed-cord = Cord
placed-cord-down = { $from }, down to { $to }
placed-cord-to-hang-by = Cord to hang by
placed-from-places-on = from { $n } places on { $names }
placed-cords-that-meet = Cords that meet
placed-loop = Loop
placed-wire = Wire
placed-wire-into = { $from }, into { $to }
placed-joint = Joint
placed-part-turns-on-a-thread = { $part } turns on a thread
placed-at-its-start = at its start
placed-at-its-end = at its end
placed-at-its-neck-rnd-round = at its neck, Rnd { $round }
placed-at-its-neck-which-it-does-not-have = at its neck, which it does not have
placed-at-its-lip-rnd-round = at its lip, Rnd { $round }
placed-at-its-lip-which-it-does-not-have = at its lip, which it does not have
placed-at-rnd-round = at Rnd { $round }

## The Proofread stage

findings-reading = reading…
findings-none = none
findings-problems = Problems
findings-what-does-not-add-up-is-listed-here = What does not add up is listed here, each with its most likely fix.
findings-no-rounds-were-found-in-it = No rounds were found in it.
findings-unread = What was read adds up; { $n ->
        [one] 1 line of rounds was
       *[other] { $n } lines of rounds were
    } not read.
findings-no-problems-found-every-round-adds-up = No problems found: every round adds up.
findings-read-in-other-terms = Read in other terms
findings-as-the-text-says = As the text says
findings-line-line = Line { $line }
findings-line-says = Line { $line }: { $message }
findings-fix = Fix
findings-fix-line-line-problem-number = Fix line { $line }, problem { $number }
findings-make-this-change-in-the-text-ctrl-z = Make this change in the text; Ctrl+Z undoes it
findings-say-what-it-means = Say what it means
findings-say-what-line-line-means-problem = Say what line { $line } means, problem { $number }
findings-put-it-in-usual-words-it-is-read-that = Put it in usual words; it is read that way wherever it comes again in this text
findings-show-the-place-in-the-text = Show the place in the text
findings-sum = { $rounds ->
        [one] 1 round
       *[other] { $rounds } rounds
    }, { $stitches ->
        [one] 1 stitch
       *[other] { $stitches } stitches
    }
findings-widest-n = widest { $n }
saying-words-means = “{ $words }” means
saying-2-sc-inc-x-6 = (2 sc, inc) x 6
saying-what-it-means = What it means
saying-a-number-stands-for-any-number-and-for = A number stands for any number, and for the same one in the meaning.
saying-save = Save
saying-save-what-it-means = Save what it means
saying-cancel = Cancel
saying-say-nothing = Say nothing
saying-what-you-said-about-this-text = What you said about this text
saying-words-means-means = “{ $words }” means { $means }
saying-remove = Remove
saying-remove-what-you-said-number = Remove what you said, { $number }
proofread-a-written-pattern-yours-or-anothers = any written pattern
proofread-open-pattern = Open pattern
proofread-paste-a-pattern = Paste a pattern
proofread-save-the-text = Save the text
proofread-copy-the-text = Copy the text
proofread-paste-a-pattern-or-open-a-file-with = Paste a pattern, or open a file with one.
proofread-every-round-is-checked-against-its = Every round is checked against its neighbors as you type.
proofread-pattern-text = Pattern text
proofread-read-as-reading = Read as: { $reading }
proofread-read-as-reading-supplied = Read as: { $reading } ({ $supplied })
proofread-this-round-was-not-read-the-next-is = This round was not read; the next is checked against the count it states.

## File dialogs of the desktop

dialog-png-jpeg-or-webp = PNG, JPEG or WebP
dialog-pictures-drawings-tables-and-solids = Pictures, drawings, tables and solids
dialog-text-page-document-or-pdf = Text, page, document or PDF
dialog-plain-text = Plain text
dialog-course = Course
dialog-web-page = Web page
dialog-picture-of-the-first-page = Picture of the first page
dialog-pdf = PDF
dialog-markdown = Markdown
dialog-captions-subrip = Captions (SubRip)
dialog-captions-webvtt = Captions (WebVTT)
dialog-choose-a-photograph = Choose a photograph
dialog-choose-a-logo = Choose a logo
dialog-open-the-published-version = Open the published version
dialog-plumpline-project = Plumpline project
dialog-open-a-project = Open a project
dialog-open-a-written-pattern = Open a written pattern
dialog-choose-a-picture-to-trace = Choose a picture to trace
dialog-choose-a-file-with-a-shape-in-it = Choose a file with a shape in it
dialog-save-the-written-pattern = Save the written pattern
dialog-export-the-sheet = Export the sheet
dialog-export-the-picture-of-the-body = Export the picture of the body
dialog-print-the-lesson-as-a-pdf = Print the lesson as a PDF
dialog-save-the-course = Save the course
dialog-open-a-course = Open a course
dialog-save-the-project = Save the project

## What went wrong

trouble-the-file = The file
trouble-its-file-may-hold-the-old-version-or = its file may hold the old version or the new one; save elsewhere
trouble-try-again = try again
trouble-book-kept = { $path }: { $error }; it is kept as { $aside }
lesson-tally = { $right } of { $all } right so far: { $list }
trouble-copy-is-copied-next-to-the-project-so = { $copy } is copied next to the project, so that it goes with it.
trouble-the-picture-does-not-go-with-the = The picture does not go with the project: { $error }.
trouble-reading-the-pattern = Reading the pattern
trouble-written-piece = Written piece
trouble-the-pattern-could-not-be-checked = The pattern could not be checked ({ $broken }); change it to try again
trouble-preparing-the-sheet = Preparing the sheet
trouble-it-could-not-be-made-broken = it could not be made ({ $broken })
trouble-preparing-the-sizes = Preparing the sizes
trouble-the-sizes-could-not-be-planned-broken = The sizes could not be planned ({ $broken }); change one to try again
trouble-putting-the-toy-together = Putting the toy together
trouble-the-toy-could-not-be-drawn-broken-turn = The toy could not be drawn ({ $broken }); turn it to try again
trouble-the-results-could-not-be-found-broken = The results could not be found ({ $broken })
trouble-the-body-could-not-be-drawn-broken = The body could not be drawn ({ $broken }); turn it to try again
trouble-the-fabric-could-not-relax-broken = The fabric could not relax ({ $broken }); choose the step again
trouble-the-sizes-could-not-be-drawn-broken = The sizes could not be drawn ({ $broken })
trouble-it-could-not-be-planned-broken = it could not be planned ({ $broken })
trouble-the-picture-could-not-be-traced-why = the picture could not be traced ({ $why })
trouble-the-picture-could-not-be-read-broken = the picture could not be read ({ $broken }); choose another
trouble-it-cannot-be-shown = it cannot be shown
trouble-choose-another = choose another
trouble-the-file-could-not-be-read-why = the file could not be read ({ $why })
trouble-piece = Piece
trouble-folder-recovery-copies-cannot-be-kept = { $folder }: recovery copies cannot be kept ({ $error }); save your work often
trouble-path-the-recovery-copy-cannot-be = { $path }: the recovery copy cannot be written ({ $error }); save the project
trouble-there-is-no-room-for-another = there is no room for another
trouble-recovery-copies-and-gauges-may-not-be = Recovery copies and gauges may not be kept ({ $broken }); save your work
trouble-no-thread-could-be-started-error = no thread could be started: { $error }
trouble-it-was-stopped = it was stopped
trouble-the-program-is-at-fault = the program is at fault
start-knots-knots = { $knots } knots
body-whole-window = Whole window
body-show-larger = Show the body larger
body-larger-does = Put the body in the place of the outline
body-larger = Larger
body-whole-window-does = Fill the window with the body; Esc ends it
body-fill-the-window = Fill the window with the body
present-view-does = Show this, two of the three at most
present-end-does = Back to the bench (Esc)
present-end-name = End presenting
making-small-does = The round and its steps in a small window that stays on top, beside a film
making-small = Small window
making-small-title = Plumpline: under the hook
making-small-planning = Planning…
color-hue = Hue
color-strength = Strength of the color
color-lightness = Lightness of the color
color-hexadecimal = Color in hexadecimal
color-hexadecimal-does = Red, green and blue as six digits: #B85640
yarn-brand-hint = Brand, range, shade
yarn-brand = Brand of the yarn
yarn-brand-does = As its band says, in a line of your own; it is on the sheet
yarn-a-ball = A ball
yarn-not-known = not known
yarn-ball-does = What a ball of it holds; dragged to nothing it is not known
yarn-ball-usual-does = Say that a ball holds 50 g
yarn-meters-in-a-ball = Meters in a ball
sizes-whole-working = working it out …
sizes-whole-as-drawn = as drawn
sizes-whole-cannot = a piece of it cannot be made
sizes-all-pieces = All pieces
sizes-of-all-pieces = Sizes of all pieces
sizes-all-pieces-does = The sizes of every piece in one table, and what each takes
sizes-no-stuffing = none
sizes-beside-title = Beside the sizes
sizes-about-seams = where pieces meet
sizes-about-yarn = worked in another one
sizes-about-sample = what a finished piece teaches
sizes-about-match = as large as a toy at hand
board-scale-hint = Scale: lay both ends of the line on a length you know, then type that length
board-fill-does = Fill the body over the picture, or leave its edge alone
board-fill = Fill the body
board-share-does = At the same place and scale
board-another-picture = Another picture…
ask-folder-above = Up to the folder above
ask-up = Up
start-add-does = One piece more, after the one selected
start-add = Add it to this project
start-drawn-freehand = Drawn freehand
start-freehand-about = Drawn beside its axis
start-draw-here = Draw the shape here
start-draw-hint = Draw one side, from end to end, beside the dashed axis
start-freehand-short = freehand: too short a line; draw from end to end
start-freehand-level = freehand: no height; draw along the axis
pieces-hide-does = Keep it off the strip of pieces; it stays in the project and in this list
pieces-gallery = Gallery…
pieces-gallery-name = Add from the gallery
pieces-gallery-does = All that a piece can start from: starters, a formula, freehand, a file
pieces-show = Show
pieces-hide = Hide
measured-balls = { $n ->
        [one] 1 ball
       *[other] { $n } balls
    }
measured-balls-in-all = { $balls }, with what the estimate may be short
yarn-takes = This piece takes { $length }
yarn-takes-balls = { $n ->
        [one] This piece takes { $length }, 1 ball
       *[other] This piece takes { $length }, { $n } balls
    }
board-picture-of = The picture of { $piece }
recent-continue = Continue { $piece }, round { $round }
recent-go-on-with = Go on with { $name }
recent-name-in-folder = { $name }, in { $folder }
recent-in-folder = in { $folder }
pieces-hidden = { $piece }, hidden
present-view-name = Present: { $view }
present-end = End
present-outline = Outline
present-body = Body
present-bend = Bend strip
strip-lies-flat = lies flat
step-add-the-piece = Add the piece { $name }
ask-folder = Folder { $name }
ask-file = File { $name }
sizes-whole-all = All, { $size }
making-small-of = of { $last } · { $name }
making-small-made = { $done } of { $count }
making-small-to-go = { $n } to go
making-small-then = then { $stitch }
start-freehand = Freehand
part-each-its-own-place = Each its own place
part-left-and-right-or-each-one-around = Left and right, or each one around, become parts of their own
sheet-saved-as-name = Saved as { $name }.
sheet-what-has-changed = What has changed
sheet-and-more-more = … and { $more } more.
sheet-on-the-sheet-the-first-line-is-the = On the sheet; the first line is the heading
sheet-changes-on-the-sheet = Changes on the sheet
told-the-changes-are-copied = The changes are copied.
told-the-system-opens-it-with-nothing-error = the system opens it with nothing ({ $error })
told-open-it-from-its-folder = open it from its folder

## Commands of publishing

publish-web-page = Web page…
publish-text = Text…
publish-page-picture = Page picture…
publish-print = Print…
publish-open-it = Open it
publish-add-a-photograph = Add a photograph…
publish-choose-a-logo = Choose a logo…
publish-compare-with-a-published-version = Compare with a published version…
publish-copy-the-changes = Copy the changes
publish-put-the-changes-on-the-sheet = Put the changes on the sheet
publish-save-the-sheet-as-one-page-for-a = Save the sheet as one page for a browser, to read beside the yarn
publish-save-the-whole-pattern-as-plain-text = Save the whole pattern as plain text
publish-save-a-picture-of-the-first-page = Save a picture of the first page
publish-open-the-pages-in-the-systems-viewer = Open the pages in the system's viewer, which prints them
publish-open-the-file-that-was-written-last = Open the file that was written last
publish-add-a-photograph-to-the-sheet-png-jpeg = Add a photograph to the sheet: PNG, JPEG or WebP
publish-choose-a-logo-for-the-head-of-the = Choose a logo for the head of the first page
publish-choose-the-project-as-it-was-published = Choose the project as it was published, to see what has changed
publish-copy-what-has-changed-as-an-errata = Copy what has changed as an errata paragraph
publish-add-what-has-changed-to-the-sheet-in-a = Add what has changed to the sheet, in a section of its own

## The Assembly stage: the surface of a part, painted and embroidered

surface-of = Surface of { $part }
surface-chosen = { $name }, round { $round }, stitches { $from } to { $to }
surface-off = Off
surface-take-paint-off = Take paint off
surface-back-to-the-yarn-of-the-round = Stitches go back to the yarn of their round
surface-paint-in = Paint in yarn { $letter }
surface-embroider-in = Embroider in yarn { $letter }
surface-new-yarn = New yarn
surface-paint-in-a-new-yarn = Use a new yarn
surface-comes-with-the-first-stitch = Comes with the first stitch
surface-round = Round
surface-round-to-paint = Round to paint
surface-from = From stitch
surface-first-stitch-to-paint = First stitch to paint
surface-to = To stitch
surface-last-stitch-to-paint = Last stitch to paint
surface-counted-as-rounds-are-worked = Counted as the rounds are worked; round 1 is in one yarn
surface-take-paint-off-these = Take paint off these
surface-paint-these-in = Paint these in { $letter }
surface-paint = Paint
surface-backstitch = Backstitch
surface-straight = Straight stitch
surface-knots = French knots
surface-needle-round = Round the needle goes through after
surface-needle-stitch = Stitch the needle goes through after
surface-after-stitch = After stitch
surface-where-the-needle-goes-through = Where the needle goes through the fabric
surface-add-the-place = Add the place
surface-take-last-off = Take the last off
surface-another-line = Another line
surface-line = { $number }: { $stitch } × { $places }, yarn { $letter }
surface-remove-line = Remove embroidery { $number }
surface-mirror-line = Mirror embroidery { $number }
surface-mirrored = Mirrored
surface-click-between-stitches = Click between stitches, one place after another; Space adds the place chosen by the arrow keys, Backspace takes the last one off

# Files that are read and written
file-the-file = the file
file-line = line { $line }
file-no-docx = the file is no .docx or is broken; save the pattern again
file-is-broken = the file is broken; save the pattern again
file-is-locked = the file is locked with a password; save it without one
file-is-no-text = it is no text; save the pattern as plain text
file-holds-too-much-text = it holds more than { $most } MB of text; save the pattern by itself
file-groups-too-deep = its groups lie too deep; save the pattern as plain text
pdf-is-locked = the PDF is locked with a password; save it without one
pdf-is-broken = the PDF is broken; save it again
pdf-has-too-many-pages = the PDF has { $pages } pages; save those of the pattern by themselves
pdf-holds-no-text = the PDF holds pictures and no text; type the pattern or paste it
profile-is-a-picture = { $file }: it is a picture; trace it (plumpline trace)
profile-table-has-its-height = { $file }: a table says itself how high it is; leave the height out
sheet-ending-not-known = { $file }: the ending is not known; end the name in .pdf, .html, .md, .txt or .png, or in .srt or .vtt for what is said
script-is-a-text = a script is a text; end the name in .txt, .srt or .vtt
blurb-is-a-text = a shop's words are a text; end the name in .txt or .md
sheet-no-such-page = --page: there is no page { $page }; the last is { $last }
lesson-at-this-gauge = the lesson at this gauge: { $why }
lesson-place = lesson
lesson-piece-not-planned = the piece is not planned yet
lesson-mend-the-piece = mend it
piece-by-name = piece “{ $name }”
piece-fails = piece “{ $name }”, { $why }

# What stands on the pages of a sheet
arrange-pictures-of-your-own = Pictures of your own
arrange-logo-place = It stands at the head of the first page
arrange-cover-place = It stands on the first page
arrange-a-photograph = A photograph
arrange-photograph-n = photograph { $n }
arrange-what-stands-under-it = what stands under it
arrange-caption-of-photograph = Caption of photograph { $n }
arrange-leave-out = Leave out
arrange-photos = Photographs
arrange-photos-why = Your photographs, but for the cover
arrange-words = Abbreviations
arrange-words-why = What they mean, and how stitches are worked
arrange-pieces = Pieces
arrange-pieces-why = The rounds of every piece; no sheet goes without
arrange-assembly = Putting it together
arrange-assembly-why = How the pieces are put together
arrange-cautions = Cautions
arrange-cautions-why = What to mind before it is given away
arrange-changes = What has changed
arrange-changes-why = Since a version that was published
arrange-tester = Form for testers
arrange-tester-why = A page on which testers note what came out
arrange-bodies = Drawn pieces
arrange-bodies-why = The stuffed pieces on the first page
arrange-measures = Measures
arrange-measures-why = Each piece drawn with its measures
arrange-charts = Round charts
arrange-charts-why = The rounds in symbols
arrange-sections = Sections
arrange-where-cautions-stand = Cautions stand at the foot of the first page where there is room, unless you move them before the pieces.
arrange-logo = logo
arrange-logo-name = Logo: { $name }
arrange-cover-name = Cover: { $name }
arrange-remove = Remove
arrange-later = Later
arrange-earlier = Earlier
arrange-show = Show
