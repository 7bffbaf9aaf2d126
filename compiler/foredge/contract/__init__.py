"""What a plugin imports, and the only thing of ours that it imports."""

from foredge.contract.backing import back_cloth as back_cloth
from foredge.contract.bench import Bench as Bench, Room as Room
from foredge.contract.book import Book as Book, Lookup as Lookup
from foredge.contract.build import Build as Build
from foredge.contract.card import (
    board_figures as board_figures,
    cited as cited,
    coated_sides as coated_sides,
    crush as crush,
)
from foredge.contract.clay_drying import shut_below as shut_below
from foredge.contract.closure import (
    BEFORE_PASTE_DOWNS as BEFORE_PASTE_DOWNS,
    Closure as Closure,
    ClosureJob as ClosureJob,
    ClosureResult as ClosureResult,
    Relief as Relief,
)
from foredge.contract.cost import (
    Cost as Cost,
    MaterialCost as MaterialCost,
    StageHours as StageHours,
    Sum as Sum,
)
from foredge.contract.covering_stock import (
    Backing as Backing,
    CoveringStock as CoveringStock,
    adhesive_problems as adhesive_problems,
    covering_stock as covering_stock,
)
from foredge.contract.covers import (
    Corners as Corners,
    CoveringOptions as CoveringOptions,
    corner as corner,
    covering_piece as covering_piece,
    glue_on_boards as glue_on_boards,
    make_up as make_up,
    piece_mass as piece_mass,
    turn_in as turn_in,
    turn_in_steps as turn_in_steps,
)
from foredge.contract.cut_sheets import (
    CutSheet as CutSheet,
    Cutting as Cutting,
    Homeless as Homeless,
    SheetNeed as SheetNeed,
)
from foredge.contract.drying import dry_in_oven as dry_in_oven, dry_in_room as dry_in_room
from foredge.contract.faces import Face as Face, faces as faces, pieces_from as pieces_from
from foredge.contract.finish import (
    Coat as Coat,
    CoatRole as CoatRole,
    Finish as Finish,
    FinishJob as FinishJob,
    FinishOptions as FinishOptions,
    FinishResult as FinishResult,
    coats_of as coats_of,
    finish_keys as finish_keys,
    targets_of as targets_of,
)
from foredge.contract.flat import Crease as Crease, KeepOut as KeepOut, Size as Size
from foredge.contract.glue import (
    adhesive_words as adhesive_words,
    cautions as cautions,
    glue as glue,
    wet as wet,
)
from foredge.contract.hook import hookimpl as hookimpl
from foredge.contract.jobs import (
    BoardsJob as BoardsJob,
    BoardsResult as BoardsResult,
    CasingInJob as CasingInJob,
    CoverJob as CoverJob,
    CoverResult as CoverResult,
    EdgeJob as EdgeJob,
    EndPaperJob as EndPaperJob,
    EndPaperResult as EndPaperResult,
    SewingJob as SewingJob,
    SewingResult as SewingResult,
    SpineJob as SpineJob,
    SpineResult as SpineResult,
)
from foredge.contract.joining import (
    joined_wettings as joined_wettings,
    paste_down_trim as paste_down_trim,
    press_book as press_book,
)
from foredge.contract.ledger import Ledger as Ledger, LedgerLine as LedgerLine, Purchase as Purchase
from foredge.contract.look import (
    EdgeLook as EdgeLook,
    Inside as Inside,
    Layer as Layer,
    Lies as Lies,
    Look as Look,
    Raised as Raised,
    Seen as Seen,
    Side as Side,
    Stuff as Stuff,
    Texture as Texture,
    rectangle as rectangle,
    stuff_of as stuff_of,
    whole_face as whole_face,
)
from foredge.contract.measures import (
    Amount as Amount,
    AmountOrCount as AmountOrCount,
    Angle as Angle,
    Count as Count,
    CountOrZero as CountOrZero,
    Density as Density,
    Duration as Duration,
    DurationOrZero as DurationOrZero,
    FontFile as FontFile,
    Grammage as Grammage,
    Length as Length,
    LengthOrZero as LengthOrZero,
    Mass as Mass,
    Part as Part,
    Ratio as Ratio,
    SpecFile as SpecFile,
    Temperature as Temperature,
    ThreadSize as ThreadSize,
    Volume as Volume,
    slot as slot,
    spec_file as spec_file,
    stock_name as stock_name,
    table_row as table_row,
)
from foredge.contract.moisture import Balance as Balance, Moisture as Moisture
from foredge.contract.money import (
    Money as Money,
    Price as Price,
    Purse as Purse,
    places_of as places_of,
)
from foredge.contract.options import Options as Options, PartOptions as PartOptions
from foredge.contract.ornament import (
    INTO_CASE as INTO_CASE,
    Faces as Faces,
    Ornament as Ornament,
    OrnamentJob as OrnamentJob,
    OrnamentOptions as OrnamentOptions,
    OrnamentResult as OrnamentResult,
    Surface as Surface,
    faces_of as faces_of,
    no_ornament as no_ornament,
    ornament_job as ornament_job,
    ornament_keys as ornament_keys,
)
from foredge.contract.plan import Plan as Plan
from foredge.contract.plugin import (
    Boards as Boards,
    CasingIn as CasingIn,
    Covering as Covering,
    Edge as Edge,
    EndPapers as EndPapers,
    PartPlugin as PartPlugin,
    Plugin as Plugin,
    Sewing as Sewing,
    Spine as Spine,
    Stage as Stage,
)
from foredge.contract.polygon import (
    faults_of_polygon as faults_of_polygon,
    inset as inset,
    signed_area as signed_area,
)
from foredge.contract.readers import Emitter as Emitter, Rule as Rule
from foredge.contract.relief import (
    level_cuts as level_cuts,
    measure_solids as measure_solids,
    outline_of as outline_of,
    overhang_of as overhang_of,
    top_of as top_of,
    upright_cut as upright_cut,
)
from foredge.contract.relief_parts import (
    RELIEF_PART as RELIEF_PART,
    Panel as Panel,
    ReliefJob as ReliefJob,
    ReliefPart as ReliefPart,
    ReliefPartOptions as ReliefPartOptions,
    ReliefPartResult as ReliefPartResult,
    option_path as option_path,
    place_solids as place_solids,
    refuse_part as refuse_part,
    relief_job as relief_job,
    shape_part as shape_part,
)
from foredge.contract.sculpture import (
    Shaped as Shaped,
    depth_of as depth_of,
    figures_of as figures_of,
    panel_of as panel_of,
    reliefs_of as reliefs_of,
    shapes_of as shapes_of,
    skin_of as skin_of,
)
from foredge.contract.shelf import (
    Figures as Figures,
    ThreadFigures as ThreadFigures,
    cloth_figures as cloth_figures,
    paper_figures as paper_figures,
    thread_figures as thread_figures,
)
from foredge.contract.skin import (
    SKIN as SKIN,
    Setting as Setting,
    Skin as Skin,
    SkinFigures as SkinFigures,
    SkinJob as SkinJob,
    SkinOptions as SkinOptions,
    SkinResult as SkinResult,
    drying_of as drying_of,
    skin_figures as skin_figures,
)
from foredge.contract.solid_check import (
    faults_of_solid as faults_of_solid,
    lost_under_skin as lost_under_skin,
    reach as reach,
)
from foredge.contract.solid_report import (
    Centre as Centre,
    Contour as Contour,
    Overhang as Overhang,
    Rings as Rings,
    Section as Section,
    SolidError as SolidError,
    SolidReport as SolidReport,
)
from foredge.contract.solids import (
    MOST_CORNERS as MOST_CORNERS,
    MOST_PIECES as MOST_PIECES,
    Cap as Cap,
    Frustum as Frustum,
    Made as Made,
    Mound as Mound,
    Placed as Placed,
    ReliefShape as ReliefShape,
    Ridge as Ridge,
    Ring as Ring,
    Slab as Slab,
    Solid as Solid,
    Tube as Tube,
)
from foredge.contract.stock import (
    Board as Board,
    Cloth as Cloth,
    Flat as Flat,
    Grain as Grain,
    Linear as Linear,
    Sheet as Sheet,
    StockItem as StockItem,
    Supply as Supply,
    Tape as Tape,
    Thread as Thread,
)
from foredge.contract.surfaces import (
    PANELS as PANELS,
    Left as Left,
    Patch as Patch,
    Region as Region,
    Surfaces as Surfaces,
    Target as Target,
    known as known,
    lettered_panels as lettered_panels,
    overlap as overlap,
    regions_of as regions_of,
    relief_panels as relief_panels,
    surfaces_of as surfaces_of,
)
from foredge.contract.text import Text as Text, say as say
from foredge.contract.work import (
    Gate as Gate,
    Operation as Operation,
    Piece as Piece,
    PieceGrain as PieceGrain,
    Reading as Reading,
    SoonAfter as SoonAfter,
    StageResult as StageResult,
    Upstream as Upstream,
    Use as Use,
    Wetting as Wetting,
    merge as merge,
)
from foredge.contract.work_plan import (
    Chain as Chain,
    Evening as Evening,
    Stretch as Stretch,
    TimedStep as TimedStep,
    WorkPlan as WorkPlan,
)
from foredge.dimension import (
    AREA as AREA,
    DENSITY as DENSITY,
    GRAMMAGE as GRAMMAGE,
    LENGTH as LENGTH,
    LINEAR_DENSITY as LINEAR_DENSITY,
    MASS as MASS,
    RATIO as RATIO,
    TIME as TIME,
    VOLUME as VOLUME,
    Dimension as Dimension,
)
from foredge.display import show_length as show_length
from foredge.drawing.model import (
    Arc as Arc,
    CheckBar as CheckBar,
    Circle as Circle,
    Cross as Cross,
    Drawing as Drawing,
    GrainArrow as GrainArrow,
    Hatch as Hatch,
    Item as Item,
    Label as Label,
    Line as Line,
    Measured as Measured,
    Point as Point,
    Role as Role,
    Shape as Shape,
    corners as corners,
)
from foredge.drawing.settle import settle as settle, shortened as shortened, words_of as words_of
from foredge.problem import (
    Accepted as Accepted,
    Diagnostic as Diagnostic,
    Path as Path,
    Problem as Problem,
    Severity as Severity,
    error as error,
    note as note,
    warning as warning,
)
from foredge.quantity import (
    Band as Band,
    Origin as Origin,
    Quantity as Quantity,
    ceil as ceil,
    choose as choose,
    count as count,
    estimate as estimate,
    floor as floor,
    given as given,
    leaf as leaf,
    maximum as maximum,
    minimum as minimum,
    number as number,
    opaque as opaque,
    root as root,
    rounded as rounded,
    rounded_up as rounded_up,
    total as total,
)
from foredge.spec.words import listed as listed
from foredge.tables import TableError as TableError
