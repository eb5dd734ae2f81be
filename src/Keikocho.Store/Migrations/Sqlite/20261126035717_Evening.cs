using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Keikocho.Store.Migrations.Sqlite
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
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Salt = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Digest = table.Column<byte[]>(type: "BLOB", nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false)
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
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    DeviceId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Role = table.Column<int>(type: "INTEGER", nullable: false),
                    Date = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    HallId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    JoinedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    EndsAt = table.Column<long>(type: "INTEGER", nullable: false),
                    LetInById = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PutOutAt = table.Column<long>(type: "INTEGER", nullable: true),
                    PutOutById = table.Column<byte[]>(type: "BLOB", nullable: true)
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
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    FirstId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    SecondId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    From = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    To = table.Column<DateOnly>(type: "TEXT", nullable: true)
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
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    LessonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Activity = table.Column<int>(type: "INTEGER", nullable: false),
                    NearMiss = table.Column<bool>(type: "INTEGER", nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false)
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
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Form = table.Column<int>(type: "INTEGER", nullable: false),
                    Salt = table.Column<byte[]>(type: "BLOB", nullable: false),
                    MemoryKib = table.Column<int>(type: "INTEGER", nullable: false),
                    Passes = table.Column<int>(type: "INTEGER", nullable: false),
                    ByPassphrase = table.Column<byte[]>(type: "BLOB", nullable: false),
                    RecoverySalt = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ByRecovery = table.Column<byte[]>(type: "BLOB", nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: true),
                    EndedAt = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Locks", x => new { x.Club, x.Id });
                });

            migrationBuilder.CreateTable(
                name: "Obstacles",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    HallId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    FromLengthCm = table.Column<int>(type: "INTEGER", nullable: false),
                    FromWidthCm = table.Column<int>(type: "INTEGER", nullable: false),
                    LengthCm = table.Column<int>(type: "INTEGER", nullable: false),
                    WidthCm = table.Column<int>(type: "INTEGER", nullable: false)
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
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    LessonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    End = table.Column<int>(type: "INTEGER", nullable: false),
                    ItemId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Slot = table.Column<int>(type: "INTEGER", nullable: false),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false),
                    TakenBackAt = table.Column<long>(type: "INTEGER", nullable: true)
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
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    LessonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    OneId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    OtherId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Round = table.Column<int>(type: "INTEGER", nullable: false),
                    Activity = table.Column<int>(type: "INTEGER", nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false),
                    UndoneAt = table.Column<long>(type: "INTEGER", nullable: true)
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
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    KnockId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Kind = table.Column<int>(type: "INTEGER", nullable: false),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    Words = table.Column<byte[]>(type: "BLOB", nullable: true),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: false),
                    DeviceId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false)
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

            // An accident record is added to and nothing else: whatever the code does, the file refuses.
            migrationBuilder.Sql("""
                CREATE TRIGGER knock_lines_are_not_changed BEFORE UPDATE ON "KnockLines" BEGIN SELECT RAISE(ABORT, 'KnockLines are append-only.'); END;
                CREATE TRIGGER knock_lines_are_not_deleted BEFORE DELETE ON "KnockLines" BEGIN SELECT RAISE(ABORT, 'KnockLines are append-only.'); END;
                CREATE TRIGGER knocks_are_not_changed BEFORE UPDATE ON "Knocks" BEGIN SELECT RAISE(ABORT, 'Knocks are append-only.'); END;
                CREATE TRIGGER knocks_are_not_deleted BEFORE DELETE ON "Knocks" BEGIN SELECT RAISE(ABORT, 'Knocks are append-only.'); END;
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
