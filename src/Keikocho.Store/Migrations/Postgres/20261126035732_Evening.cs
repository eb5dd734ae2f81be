using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Keikocho.Store.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class Evening : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "AdultCodes",
                columns: table => new
                {
                    Club = table.Column<int>(type: "integer", nullable: false),
                    PersonId = table.Column<Guid>(type: "uuid", nullable: false),
                    Salt = table.Column<byte[]>(type: "bytea", nullable: false),
                    Digest = table.Column<byte[]>(type: "bytea", nullable: false),
                    MadeAt = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AdultCodes", x => new { x.Club, x.PersonId });
                    table.ForeignKey(
                        name: "FK_AdultCodes_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Joins",
                columns: table => new
                {
                    Club = table.Column<int>(type: "integer", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    DeviceId = table.Column<Guid>(type: "uuid", nullable: false),
                    PersonId = table.Column<Guid>(type: "uuid", nullable: false),
                    Role = table.Column<int>(type: "integer", nullable: false),
                    Date = table.Column<DateOnly>(type: "date", nullable: false),
                    HallId = table.Column<Guid>(type: "uuid", nullable: false),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    JoinedAt = table.Column<long>(type: "bigint", nullable: false),
                    EndsAt = table.Column<long>(type: "bigint", nullable: false),
                    LetInById = table.Column<Guid>(type: "uuid", nullable: false),
                    PutOutAt = table.Column<long>(type: "bigint", nullable: true),
                    PutOutById = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Joins", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Joins_Devices_Club_DeviceId",
                        columns: x => new { x.Club, x.DeviceId },
                        principalTable: "Devices",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Joins_Halls_Club_HallId",
                        columns: x => new { x.Club, x.HallId },
                        principalTable: "Halls",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Joins_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "KeepTogethers",
                columns: table => new
                {
                    Club = table.Column<int>(type: "integer", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    FirstId = table.Column<Guid>(type: "uuid", nullable: false),
                    SecondId = table.Column<Guid>(type: "uuid", nullable: false),
                    From = table.Column<DateOnly>(type: "date", nullable: false),
                    To = table.Column<DateOnly>(type: "date", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_KeepTogethers", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_KeepTogethers_People_Club_FirstId",
                        columns: x => new { x.Club, x.FirstId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_KeepTogethers_People_Club_SecondId",
                        columns: x => new { x.Club, x.SecondId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Knocks",
                columns: table => new
                {
                    Club = table.Column<int>(type: "integer", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    PersonId = table.Column<Guid>(type: "uuid", nullable: false),
                    LessonId = table.Column<Guid>(type: "uuid", nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    Activity = table.Column<int>(type: "integer", nullable: false),
                    NearMiss = table.Column<bool>(type: "boolean", nullable: false),
                    MadeAt = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Knocks", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Knocks_Lessons_Club_LessonId",
                        columns: x => new { x.Club, x.LessonId },
                        principalTable: "Lessons",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Knocks_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Locks",
                columns: table => new
                {
                    Club = table.Column<int>(type: "integer", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Form = table.Column<int>(type: "integer", nullable: false),
                    Salt = table.Column<byte[]>(type: "bytea", nullable: false),
                    MemoryKib = table.Column<int>(type: "integer", nullable: false),
                    Passes = table.Column<int>(type: "integer", nullable: false),
                    ByPassphrase = table.Column<byte[]>(type: "bytea", nullable: false),
                    RecoverySalt = table.Column<byte[]>(type: "bytea", nullable: false),
                    ByRecovery = table.Column<byte[]>(type: "bytea", nullable: false),
                    MadeAt = table.Column<long>(type: "bigint", nullable: false),
                    ById = table.Column<Guid>(type: "uuid", nullable: true),
                    EndedAt = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Locks", x => new { x.Club, x.Id });
                });

            migrationBuilder.CreateTable(
                name: "Obstacles",
                columns: table => new
                {
                    Club = table.Column<int>(type: "integer", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    HallId = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "text", nullable: false),
                    FromLengthCm = table.Column<int>(type: "integer", nullable: false),
                    FromWidthCm = table.Column<int>(type: "integer", nullable: false),
                    LengthCm = table.Column<int>(type: "integer", nullable: false),
                    WidthCm = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Obstacles", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Obstacles_Halls_Club_HallId",
                        columns: x => new { x.Club, x.HallId },
                        principalTable: "Halls",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Showings",
                columns: table => new
                {
                    Club = table.Column<int>(type: "integer", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    LessonId = table.Column<Guid>(type: "uuid", nullable: false),
                    End = table.Column<int>(type: "integer", nullable: false),
                    ItemId = table.Column<Guid>(type: "uuid", nullable: false),
                    Slot = table.Column<int>(type: "integer", nullable: false),
                    ById = table.Column<Guid>(type: "uuid", nullable: false),
                    MadeAt = table.Column<long>(type: "bigint", nullable: false),
                    TakenBackAt = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Showings", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Showings_Items_Club_ItemId",
                        columns: x => new { x.Club, x.ItemId },
                        principalTable: "Items",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Showings_Lessons_Club_LessonId",
                        columns: x => new { x.Club, x.LessonId },
                        principalTable: "Lessons",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Togethers",
                columns: table => new
                {
                    Club = table.Column<int>(type: "integer", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    LessonId = table.Column<Guid>(type: "uuid", nullable: false),
                    OneId = table.Column<Guid>(type: "uuid", nullable: false),
                    OtherId = table.Column<Guid>(type: "uuid", nullable: false),
                    Round = table.Column<int>(type: "integer", nullable: false),
                    Activity = table.Column<int>(type: "integer", nullable: false),
                    MadeAt = table.Column<long>(type: "bigint", nullable: false),
                    UndoneAt = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Togethers", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_Togethers_Lessons_Club_LessonId",
                        columns: x => new { x.Club, x.LessonId },
                        principalTable: "Lessons",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Togethers_People_Club_OneId",
                        columns: x => new { x.Club, x.OneId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Togethers_People_Club_OtherId",
                        columns: x => new { x.Club, x.OtherId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "KnockLines",
                columns: table => new
                {
                    Club = table.Column<int>(type: "integer", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    KnockId = table.Column<Guid>(type: "uuid", nullable: false),
                    Kind = table.Column<int>(type: "integer", nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: true),
                    Words = table.Column<byte[]>(type: "bytea", nullable: true),
                    ById = table.Column<Guid>(type: "uuid", nullable: false),
                    DeviceId = table.Column<Guid>(type: "uuid", nullable: false),
                    MadeAt = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_KnockLines", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_KnockLines_Knocks_Club_KnockId",
                        columns: x => new { x.Club, x.KnockId },
                        principalTable: "Knocks",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Joins_Club_Date_HallId",
                table: "Joins",
                columns: new[] { "Club", "Date", "HallId" });

            migrationBuilder.CreateIndex(
                name: "IX_Joins_Club_DeviceId_JoinedAt",
                table: "Joins",
                columns: new[] { "Club", "DeviceId", "JoinedAt" });

            migrationBuilder.CreateIndex(
                name: "IX_Joins_Club_HallId",
                table: "Joins",
                columns: new[] { "Club", "HallId" });

            migrationBuilder.CreateIndex(
                name: "IX_Joins_Club_PersonId",
                table: "Joins",
                columns: new[] { "Club", "PersonId" });

            migrationBuilder.CreateIndex(
                name: "IX_KeepTogethers_Club_FirstId",
                table: "KeepTogethers",
                columns: new[] { "Club", "FirstId" });

            migrationBuilder.CreateIndex(
                name: "IX_KeepTogethers_Club_SecondId",
                table: "KeepTogethers",
                columns: new[] { "Club", "SecondId" });

            migrationBuilder.CreateIndex(
                name: "IX_KnockLines_Club_KnockId",
                table: "KnockLines",
                columns: new[] { "Club", "KnockId" });

            migrationBuilder.CreateIndex(
                name: "IX_Knocks_Club_LessonId",
                table: "Knocks",
                columns: new[] { "Club", "LessonId" });

            migrationBuilder.CreateIndex(
                name: "IX_Knocks_Club_PersonId",
                table: "Knocks",
                columns: new[] { "Club", "PersonId" });

            migrationBuilder.CreateIndex(
                name: "IX_Obstacles_Club_HallId",
                table: "Obstacles",
                columns: new[] { "Club", "HallId" });

            migrationBuilder.CreateIndex(
                name: "IX_Showings_Club_ItemId",
                table: "Showings",
                columns: new[] { "Club", "ItemId" });

            migrationBuilder.CreateIndex(
                name: "IX_Showings_Club_LessonId",
                table: "Showings",
                columns: new[] { "Club", "LessonId" });

            migrationBuilder.CreateIndex(
                name: "IX_Togethers_Club_LessonId",
                table: "Togethers",
                columns: new[] { "Club", "LessonId" });

            migrationBuilder.CreateIndex(
                name: "IX_Togethers_Club_OneId",
                table: "Togethers",
                columns: new[] { "Club", "OneId" });

            migrationBuilder.CreateIndex(
                name: "IX_Togethers_Club_OtherId",
                table: "Togethers",
                columns: new[] { "Club", "OtherId" });

            // Row-level security for the tables that are new: a connection sees the club that it named, and no other.
            migrationBuilder.Sql("""
                DO $$
                DECLARE t text;
                BEGIN
                    FOREACH t IN ARRAY ARRAY['Joins', 'AdultCodes', 'Showings', 'Togethers', 'KeepTogethers', 'Obstacles', 'Knocks', 'KnockLines', 'Locks']
                    LOOP
                        EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
                        EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', t);
                        EXECUTE format('CREATE POLICY own_club ON %I USING ("Club" = current_setting(''keikocho.club'', true)::int)', t);
                    END LOOP;
                END $$;
                """);

            // An accident record is added to and nothing else: whatever the code does, the database refuses.
            migrationBuilder.Sql("""
                CREATE TRIGGER knock_lines_stay BEFORE UPDATE OR DELETE OR TRUNCATE ON "KnockLines" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
                CREATE TRIGGER knocks_stay BEFORE UPDATE OR DELETE OR TRUNCATE ON "Knocks" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "AdultCodes");

            migrationBuilder.DropTable(
                name: "Joins");

            migrationBuilder.DropTable(
                name: "KeepTogethers");

            migrationBuilder.DropTable(
                name: "KnockLines");

            migrationBuilder.DropTable(
                name: "Locks");

            migrationBuilder.DropTable(
                name: "Obstacles");

            migrationBuilder.DropTable(
                name: "Showings");

            migrationBuilder.DropTable(
                name: "Togethers");

            migrationBuilder.DropTable(
                name: "Knocks");
        }
    }
}
